import type { LineKind } from './line-kind.ts';

/**
 * The words a line is read by, in every language at once: a family book is often written in two.
 * Phrases are plain (small letters, no accents) and parted by `|`; of each language the first one
 * is the one that is written. Names of the set-up are not here: they come from the book.
 */
export type LineLanguage = 'en' | 'es';

type Phrases = Readonly<Record<LineLanguage, string>>;

export const verbWords: Readonly<Record<LineKind, Phrases>> = {
  handover: {
    en: 'out|goods out|take|takes|took',
    es: 'salida|sale|salen|lleva|llevan|se lleva|se llevan|retira',
  },
  return: {
    en: 'back|goods back|return|returns|returned|brings|brings back|brought|brought back',
    es: 'devuelve|devuelven|devolucion|trae|regresa|vuelta',
  },
  pass: {
    en: 'pass|pass on|passes|passes on|passed|passed on|gives',
    es: 'pasa|pase|traspasa|traspaso',
  },
  order: { en: 'order|orders|ordered|family order', es: 'pedido|pide|piden|encarga' },
  payment: { en: 'pay|pays|paid|payment', es: 'pago|paga|pagan|pagado|abona|abono' },
  refund: { en: 'refund|refunds|refunded|pay back|paid back', es: 'reembolso|reembolsa' },
  count: { en: 'count|counted|stock count', es: 'recuento|conteo|cuenta|contado' },
  delivery: { en: 'delivery|delivered', es: 'entrega|entregado|recepcion' },
  'supply-order': {
    en: 'supplier order|order to the supplier|order to supplier',
    es: 'pedido al proveedor',
  },
  'swap-in': { en: 'swap in|swap|swapped|swapped in', es: 'intercambio entrada|intercambio' },
  'swap-out': { en: 'swap out|swap|swapped|swapped out', es: 'intercambio salida|intercambio' },
  exchange: { en: 'exchange|exchanged', es: 'cambio|cambiado' },
  gift: { en: 'gift|gifts|gift units', es: 'regalo|regalos|donacion' },
  loss: { en: 'write off|write-off|written off|lost|loss', es: 'baja|perdida|perdido|merma' },
  found: { en: 'found', es: 'hallado|encontrado|aparece' },
  deposit: { en: 'deposit|deposited|banked', es: 'deposito|ingreso|ingresado' },
  'card-settle': { en: 'card payout|payout', es: 'abono de tarjetas|liquidacion de tarjetas' },
  debit: { en: 'debit|debited', es: 'adeudo|debito' },
  'bank-fee': { en: 'bank fee|bank charge', es: 'comision bancaria' },
  settle: { en: 'proceeds', es: 'ganancia|ganancias' },
  'stall-close': {
    en: 'stall|settle|settle stall|stall settled',
    es: 'puesto|cierre de puesto|cierra puesto',
  },
};

export const tenderWords = {
  cash: { en: 'cash|in cash', es: 'efectivo|en efectivo' },
  cheque: { en: 'cheque|check|by cheque|by check', es: 'con cheque|talon' },
  card: { en: 'card|by card', es: 'tarjeta|con tarjeta' },
} as const satisfies Readonly<Record<string, Phrases>>;

/** Words before an amount; the amount follows, as in `float 20`. */
export const amountWords = {
  float: { en: 'float', es: 'fondo' },
  cash: { en: 'cash', es: 'efectivo' },
  cards: { en: 'cards|card', es: 'tarjetas|tarjeta' },
  cheques: { en: 'cheques|cheque|checks|check', es: 'cheques|talones|talon' },
  paidout: { en: 'paid out|spent', es: 'gastado' },
  fee: { en: 'fee', es: 'comision' },
  announced: { en: 'announced', es: 'anunciado' },
} as const satisfies Readonly<Record<string, Phrases>>;

/** Words before a text without spaces, as in `slip 77`. */
export const textWords = {
  slip: { en: 'slip', es: 'albaran|vale' },
  receipt: { en: 'receipt', es: 'recibo' },
} as const satisfies Readonly<Record<string, Phrases>>;

/** A payment without a receipt, where the book would give it the next number. */
export const noReceiptWords: Phrases = { en: 'no receipt|without receipt', es: 'sin recibo' };

/** The parts of a stall's goods; what follows belongs to it. */
export const sectionWords = {
  out: { en: 'out|taken out', es: 'salida|sacado' },
  back: { en: 'back|brought back', es: 'devuelto|vuelta' },
  damaged: { en: 'damaged|broken', es: 'danado|roto' },
  sold: { en: 'sold', es: 'vendido|vendidos' },
} as const satisfies Readonly<Record<string, Phrases>>;

/** Where gift units come from, and where a card payout arrives. */
export const placeWords = {
  supplier: { en: 'supplier|the supplier', es: 'proveedor|el proveedor' },
  stockroom: { en: 'stockroom|the stockroom|stock', es: 'almacen|el almacen' },
  bank: { en: 'bank|the bank', es: 'banco|el banco' },
} as const satisfies Readonly<Record<string, Phrases>>;

export const unitWords = {
  case: { en: 'case|cases|c|cs', es: 'caja|cajas' },
  single: { en: 'single|singles|unit|units|x', es: 'unidad|unidades|suelto|sueltos|u' },
} as const satisfies Readonly<Record<string, Phrases>>;

/** All that a family has still to pay. */
export const allWords: Phrases = { en: 'all|everything|all due', es: 'todo|lo que debe' };

/** A word that says which list the next name is from, where the name alone is not clear. */
export const classWords = {
  seller: { en: 'seller', es: 'vendedor|vendedora' },
  product: { en: 'product', es: 'producto' },
  neighbour: { en: 'neighbour|neighbor|group', es: 'grupo|vecino' },
  stall: { en: 'stall', es: 'puesto' },
} as const satisfies Readonly<Record<string, Phrases>>;

export const wayWords = {
  from: { en: 'from', es: 'de|desde|del' },
  to: { en: 'to', es: 'a|para|al' },
} as const satisfies Readonly<Record<string, Phrases>>;

/** Words that say nothing a record keeps. */
export const fillerWords: Phrases = {
  en: 'and|of|the|a|an|on|at|in|by|for|with|is|are|x|has|to|from|as',
  es: 'y|e|de|del|el|la|los|las|un|una|en|con|a|al|para|por|se|su|es',
};

/** Days counted back from today. */
export const dayWords: readonly (Phrases & { readonly back: number })[] = [
  { en: 'today', es: 'hoy', back: 0 },
  { en: 'yesterday', es: 'ayer', back: 1 },
  { en: 'day before yesterday|the day before yesterday', es: 'anteayer|antier', back: 2 },
];

/** From Monday; a name alone is the last such day, today included. */
export const weekdayWords: readonly Phrases[] = [
  { en: 'monday|mon', es: 'lunes|lun' },
  { en: 'tuesday|tue|tues', es: 'martes|mar' },
  { en: 'wednesday|wed', es: 'miercoles|mie' },
  { en: 'thursday|thu|thur|thurs', es: 'jueves|jue' },
  { en: 'friday|fri', es: 'viernes|vie' },
  { en: 'saturday|sat', es: 'sabado|sab' },
  { en: 'sunday|sun', es: 'domingo|dom' },
];

/** `last friday` on a Friday is a week ago. */
export const lastWords: Phrases = { en: 'last', es: 'pasado|ultimo' };

export const monthWords: readonly Phrases[] = [
  { en: 'january|jan', es: 'enero|ene' },
  { en: 'february|feb', es: 'febrero' },
  { en: 'march|mar', es: 'marzo' },
  { en: 'april|apr', es: 'abril|abr' },
  { en: 'may', es: 'mayo' },
  { en: 'june|jun', es: 'junio' },
  { en: 'july|jul', es: 'julio' },
  { en: 'august|aug', es: 'agosto|ago' },
  { en: 'september|sep|sept', es: 'septiembre|setiembre|set' },
  { en: 'october|oct', es: 'octubre' },
  { en: 'november|nov', es: 'noviembre' },
  { en: 'december|dec', es: 'diciembre|dic' },
];

/** Every phrase of all languages. */
export function phrasesOf(phrases: Phrases): string[] {
  return [...phrases.en.split('|'), ...phrases.es.split('|')];
}

/** The phrase that is written in a language. */
export function phraseIn(phrases: Phrases, language: LineLanguage): string {
  return phrases[language].split('|')[0] ?? '';
}
