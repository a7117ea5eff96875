/**
 * Seconds from one local time (`YYYY-MM-DDTHH:MM` or with seconds) to another; negative when the
 * second is earlier. A change of the clocks between the two is not known here.
 */
export function secondsBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 1000);
}
