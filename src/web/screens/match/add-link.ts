/** The address of a form filled in: money in minor units, goods as `lines.honey=3`. */
export function addLink<D extends { readonly kind: string }>(draft: D): string {
  const search = new URLSearchParams();
  for (const [field, value] of Object.entries(draft)) {
    if (field === 'kind' || value === undefined) continue;
    if (typeof value === 'string' || typeof value === 'number') search.set(field, String(value));
    else if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      for (const [product, units] of Object.entries(value)) {
        search.set(`${field}.${product}`, String(units));
      }
    }
  }
  return `/add/${draft.kind}?${search}`;
}

/** The question why the book's balance is not this one (minor units). */
export function whyOf(place: 'bank' | 'supplier', minor: number): string {
  return `/why?about=${place}&${place}=${minor}`;
}
