/** Minutes as hours and minutes: `3 h`, `3 h 15 min`, `45 min`. */
export function hoursText(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes - hours * 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
