/**
 * Times in UTC with milliseconds, like 2027-02-01T18:00:00.000Z, as whole numbers in the same
 * order, so that many can be kept and compared without a text of any. Every month counts as 31
 * days: the numbers say which time is earlier, and not how long is between two.
 */

const ZERO = 48;

/** The number of the time that is written at a place. */
export function instantNumber(bytes: Uint8Array, at: number): number {
  const month = digits(bytes, at, 4) * 12 + digits(bytes, at + 5, 2) - 1;
  const hour = (month * 31 + digits(bytes, at + 8, 2) - 1) * 24 + digits(bytes, at + 11, 2);
  const second = (hour * 60 + digits(bytes, at + 14, 2)) * 60 + digits(bytes, at + 17, 2);
  return second * 1000 + digits(bytes, at + 20, 3);
}

/** The time as text, from its number. */
export function instantText(number: number): string {
  let left = number;
  const next = (size: number): number => {
    const part = left % size;
    left = Math.floor(left / size);
    return part;
  };
  const time = `${padded(next(1000), 3)}Z`;
  const [second, minute, hour] = [next(60), next(60), next(24)];
  const [day, month] = [next(31) + 1, next(12) + 1];
  const date = `${padded(left, 4)}-${padded(month, 2)}-${padded(day, 2)}`;
  return `${date}T${padded(hour, 2)}:${padded(minute, 2)}:${padded(second, 2)}.${time}`;
}

function digits(bytes: Uint8Array, at: number, count: number): number {
  let value = 0;
  for (let next = at; next < at + count; next += 1) value = value * 10 + (bytes[next] ?? 0) - ZERO;
  return value;
}

function padded(value: number, width: number): string {
  return String(value).padStart(width, '0');
}
