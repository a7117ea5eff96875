import { addDays } from '../src/base/day.ts';
import type { BookRecord, MovementRecord } from '../src/records/record.ts';
import { isMovement, movementKinds } from '../src/records/record.ts';
import type { SeasonWorld } from './season-world.ts';

/**
 * The acts that change what was written: edits, edits of edits, movements that become another kind,
 * removals, removals of removals, and two devices that claim the same record.
 */
export function changeSomething(world: SeasonWorld): void {
  const target = world.recentMovement(movementKinds);
  if (target === undefined) return;
  const { random } = world;
  const act = random.whole(1, 100);
  if (act <= 35) editMovement(world, target);
  else if (act <= 45) editTwice(world, target);
  else if (act <= 58) becomeAnotherKind(world, target);
  else if (act <= 75) remove(world, target);
  else if (act <= 85) claimTwice(world, target);
  else if (act <= 92) claimTwiceAndGoOn(world, target);
  else removeClaim(world);
}

function editMovement(world: SeasonWorld, target: MovementRecord): MovementRecord {
  const { random } = world;
  const date = random.chance(40) ? addDays(target.date, random.whole(-6, 6)) : target.date;
  switch (target.kind) {
    case 'delivery':
    case 'handover':
    case 'return':
      return world.edit(target, { date, lines: world.someLines(20) });
    case 'payment':
      return world.edit(target, {
        date,
        cents: target.cents + random.whole(0, 9) * 90,
        tender: random.pick(['cash', 'cheque', 'card'] as const),
        seller: random.chance(30) ? random.pick(world.sellers) : target.seller,
      });
    case 'debit':
      return world.edit(target, { date, cents: target.cents + 900 });
    case 'bounced':
      return world.edit(target, { date, charge: random.chance(50) });
    case 'stall-close':
      return world.edit(target, { date, cash: target.cash + random.whole(0, 20) * 5 });
    default:
      return world.edit(target, { date });
  }
}

function editTwice(world: SeasonWorld, target: MovementRecord): void {
  editMovement(world, editMovement(world, target));
}

/** Out was keyed for back, a refund for a payment: another kind takes the record's place. */
function becomeAnotherKind(world: SeasonWorld, target: MovementRecord): void {
  const { date } = target;
  const replaces = target.id;
  switch (target.kind) {
    case 'handover':
      world.write('return', { date, replaces, seller: target.seller, lines: target.lines });
      return;
    case 'payment': {
      const { seller, cents, tender } = target;
      world.write('refund', { date, replaces, seller, cents, tender });
      return;
    }
    case 'delivery':
      world.write('swap-in', { date, replaces, neighbour: 'fernhill', lines: target.lines });
      return;
    case 'debit':
      world.write('bank-fee', { date, replaces, cents: target.cents });
      return;
    default:
      world.write('bank-fee', { date, replaces, cents: 100 });
  }
}

function remove(world: SeasonWorld, target: BookRecord): void {
  world.write('void', { voids: target.id, reason: 'Keyed twice' });
}

/** Two devices, out of touch, each change or remove the same record. */
function claimTwice(world: SeasonWorld, target: MovementRecord): void {
  for (let claim = 1; claim <= 2; claim += 1) {
    if (world.random.chance(30)) remove(world, target);
    else editMovement(world, target);
  }
}

/** The device whose claim lost did not know so, and went on to change its own claim. */
function claimTwiceAndGoOn(world: SeasonWorld, target: MovementRecord): void {
  const one = editMovement(world, target);
  editMovement(world, target);
  if (world.random.chance(50)) editMovement(world, one);
  else remove(world, one);
}

/** Takes back a removal, or removes an edit or a set-up record. */
function removeClaim(world: SeasonWorld): void {
  const { random } = world;
  const removal = world.recent('void');
  if (random.chance(60) && removal !== undefined) {
    remove(world, removal);
    return;
  }
  const setup = world.recent(random.pick(['product', 'seller', 'hold', 'choice', 'void'] as const));
  const edited = world.records.findLast((record) => isMovement(record) && record.replaces);
  const target = random.chance(50) ? setup : edited;
  if (target !== undefined) remove(world, target);
}
