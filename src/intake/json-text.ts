import { fieldPath, saidOf } from './finding.ts';

/**
 * What JSON.parse loses without a word: a field written twice (the last one wins), a number too
 * large to be exact, a fraction so small that it vanishes. Looks at the text itself, so that
 * nothing a person wrote is dropped unsaid.
 */
export interface TextFault {
  readonly field: string;
  readonly said: unknown;
  readonly wanted: string;
}

export interface JsonText {
  readonly faults: readonly TextFault[];
  /** Numbers that reading changes, by path: what was really written. */
  readonly written: ReadonlyMap<string, string>;
}

/** A cheap sign that a line may hold a number that is not plainly whole, or an escape. */
const SUSPECT = /(?:"\s*:|[[,])\s*-?\d+[.eE]|\\/;
const TOKEN = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|[{}[\],:]|true|false|null/g;

interface Level {
  readonly keys: Set<string> | undefined;
  part: string | number;
}

/** True where something that was written on a line may have been lost by parsing it. */
export function needsCloserLook(line: string, value: unknown): boolean {
  return SUSPECT.test(line) || keysWritten(line) !== keysRead(value);
}

function keysWritten(line: string): number {
  let keys = 0;
  for (let at = line.indexOf('":'); at >= 0; at = line.indexOf('":', at + 2)) keys += 1;
  return keys;
}

/** Only asked of records that fit their schema, so not of anything deep. */
function keysRead(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  let keys = Array.isArray(value) ? 0 : Object.keys(value).length;
  for (const key in value) keys += keysRead(Reflect.get(value, key));
  return keys;
}

/** Looks closely at a line that JSON.parse has already taken. */
export function examineJsonText(line: string): JsonText {
  const faults: TextFault[] = [];
  const written = new Map<string, string>();
  const levels: Level[] = [];
  let pending: string | undefined;
  for (const [token] of line.matchAll(TOKEN)) {
    const level = levels.at(-1);
    const first = token[0] ?? '';
    if (first === '{' || first === '[') {
      levels.push({ keys: first === '{' ? new Set() : undefined, part: 0 });
    } else if (first === '}' || first === ']') {
      levels.pop();
    } else if (first === ',') {
      if (typeof level?.part === 'number') level.part += 1;
    } else if (first === '"') {
      pending = token;
    } else if (first === ':') {
      if (level !== undefined) openField(level, pending ?? '""', levels, faults);
    } else if (first === '-' || (first >= '0' && first <= '9')) {
      const path = levels.map((each) => each.part);
      const fault = numberFault(token);
      if (isChanged(token)) written.set(path.join('.'), String(saidOf(token)));
      if (fault !== undefined) {
        faults.push({ field: fieldPath(path), said: saidOf(token), wanted: fault });
      }
    }
  }
  return { faults, written };
}

function openField(level: Level, token: string, levels: readonly Level[], faults: TextFault[]) {
  const key: unknown = JSON.parse(token);
  if (typeof key !== 'string' || level.keys === undefined) return;
  level.part = key;
  if (level.keys.has(key)) {
    const field = fieldPath(levels.map((each) => each.part));
    faults.push({ field, said: `${saidOf(key)} twice`, wanted: 'each field once' });
  }
  level.keys.add(key);
}

function isChanged(literal: string): boolean {
  const value = Number(literal);
  return !Number.isFinite(value) || Math.abs(value) > Number.MAX_SAFE_INTEGER;
}

/** What is wanted instead of a number that would be kept as another number than was written. */
function numberFault(literal: string): string | undefined {
  if (isChanged(literal)) return `a number between -${SAFE} and ${SAFE}`;
  return Number.isInteger(Number(literal)) && hasFraction(literal) ? 'a whole number' : undefined;
}

const SAFE = String(Number.MAX_SAFE_INTEGER);

/** True where the number as written is not whole, however small the fraction. */
function hasFraction(literal: string): boolean {
  const [mantissa = '', exponent = '0'] = literal.toLowerCase().split('e');
  const [whole = '', fraction = ''] = mantissa.replace('-', '').split('.');
  const digits = (whole + fraction).replace(/0+$/, '');
  const pointAt = whole.length + Number(exponent);
  return digits.length > Math.max(pointAt, 0) && /[1-9]/.test(digits);
}
