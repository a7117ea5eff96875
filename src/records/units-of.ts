/**
 * Units of a product in lines that may not name it: 0 then. Always asked this way where the product
 * comes from elsewhere: every object already has a `constructor`, which is a fair id of a product.
 */
export function unitsOf(
  lines: Readonly<Record<string, number>> | undefined,
  product: string,
): number {
  return lines !== undefined && Object.hasOwn(lines, product) ? (lines[product] ?? 0) : 0;
}
