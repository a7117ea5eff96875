/** Small letters without accents, so that a search for "zoe" finds "Zoë". */
export function plainText(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .trim();
}
