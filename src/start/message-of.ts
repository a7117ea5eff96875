/** The one line to show of something that was thrown by the machine (disk, network). */
export function messageOf(thrown: unknown): string {
  const text = thrown instanceof Error ? thrown.message : String(thrown);
  return text.replace(/\s+/g, ' ').trim();
}
