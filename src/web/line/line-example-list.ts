/** Lines to begin with, in both languages; names in braces are filled in from the book. */
export interface LineExample {
  readonly en: string;
  readonly es: string;
}

export const lineExamples: readonly LineExample[] = [
  { en: '{seller} out 12 {product}', es: '{seller} lleva 12 {product}' },
  { en: '{seller} back 2 {product} yesterday', es: '{seller} devuelve 2 {product} ayer' },
  { en: 'pay {seller} 40 cash', es: 'pago {seller} 40 efectivo' },
  { en: 'pass 1 {product} from {seller} to {other}', es: 'pasa 1 {product} de {seller} a {other}' },
  { en: 'count 12 {product}', es: 'recuento 12 {product}' },
];
