/**
 * What is reached at which cost, row after row, in arrays side by side. A row goes by rising cost:
 * at each cost the greatest gain, and of equal gains the least waste. What costs more than another
 * and is worse is left out, so the last of a row is its best.
 */
export class ReachedList {
  costs: Float64Array;
  gains: Float64Array;
  wastes: Float64Array;
  losses: Float64Array;
  length = 0;
  /** Where the row that is being made starts. */
  start = 0;

  constructor(room: number) {
    this.costs = new Float64Array(room);
    this.gains = new Float64Array(room);
    this.wastes = new Float64Array(room);
    this.losses = new Float64Array(room);
  }

  copy(): ReachedList {
    const copy = new ReachedList(this.length + ROOM);
    copy.costs.set(this.costs.subarray(0, this.length));
    copy.gains.set(this.gains.subarray(0, this.length));
    copy.wastes.set(this.wastes.subarray(0, this.length));
    copy.losses.set(this.losses.subarray(0, this.length));
    copy.length = this.length;
    return copy;
  }

  /** Adds to the row. @param cost no less than that of the last */
  add(cost: number, gain: number, waste: number, loss: number): void {
    let at = this.length;
    if (at > this.start) {
      const better = gain - (this.gains[at - 1] ?? 0) || (this.wastes[at - 1] ?? 0) - waste;
      const costsMore = cost > (this.costs[at - 1] ?? 0);
      if (better < 0 || (better === 0 && !costsMore)) return;
      if (!costsMore) at -= 1;
    }
    if (at === this.costs.length) this.makeRoom();
    this.costs[at] = cost;
    this.gains[at] = gain;
    this.wastes[at] = waste;
    this.losses[at] = loss;
    this.length = at + 1;
  }

  addFrom(other: ReachedList, at: number): void {
    const { costs, gains, wastes, losses } = other;
    this.add(costs[at] ?? 0, gains[at] ?? 0, wastes[at] ?? 0, losses[at] ?? 0);
  }

  private makeRoom(): void {
    this.costs = doubled(this.costs);
    this.gains = doubled(this.gains);
    this.wastes = doubled(this.wastes);
    this.losses = doubled(this.losses);
  }
}

function doubled(list: Float64Array): Float64Array {
  const longer = new Float64Array(2 * list.length);
  longer.set(list);
  return longer;
}

const ROOM = 1024;
