import type { Say } from '../words/say.ts';

/** Minutes as hours and minutes: `3 h`, `3 h 15 min`, `45 min`. */
export function hoursText(minutes: number, say: Say): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes - hours * 60;
  if (hours === 0) return say`${rest} min`;
  return rest === 0 ? say`${hours} h` : say`${hours} h ${rest} min`;
}
