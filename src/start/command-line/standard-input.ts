import type { Outlet } from './outlet.ts';

/** All of standard input as text; bytes that are not UTF-8 become the replacement character. */
export async function standardInput(outlet: Outlet): Promise<string> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const bytes of outlet.input) text += decoder.decode(bytes, { stream: true });
  return text + decoder.decode();
}
