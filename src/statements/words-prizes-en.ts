/** What the papers of the season's end say in English: prizes, and what a host shop gets. */
export const prizeWordsEn = {
  order: {
    title: 'Prizes to order',
    lead: (pieces: string) => `${pieces} pieces to order.`,
    nothing: 'Nothing to order yet.',
    waits: (choices: string) => `Choices still missing: ${choices}.`,
    notShared: (units: string) => `${units} units are not yet shared: steps may change.`,
    confirmed: 'Only confirmed credit is in this order. Credit is never money.',
    prize: 'Prize',
    choice: 'Choice',
    pieces: 'Pieces',
    came: 'Came',
  },
  handOut: {
    title: 'Hand-out list',
    lead: (prizes: string, sellers: string) => `${prizes} prizes for ${sellers} sellers.`,
    how:
      'Tick when a prize is handed over, to an adult of the family. Keep this list with the ' +
      'season’s papers, and off notice boards.',
    handedOut: 'Handed out',
    day: 'Day',
    choiceMissing: 'choice missing',
    decide: 'For a leader to decide',
    decideWhy: 'Chosen, but the credit is not there: not yet, or no more. What is ordered stays.',
    signer: 'Handed out by',
  },
  host: {
    title: (name: string) => `Stalls at ${name}`,
    lead: (stalls: string, hours: string, units: string, value: string) =>
      `${stalls} stalls, ${hours}: ${units} units sold for ${value}.`,
    thanks: 'With thanks for having us. Prices are those of each day.',
    stalls: 'Stalls',
    stall: 'Day and time',
    open: 'Open',
    units: 'Units',
    value: 'Value',
    notCounted: 'not counted',
    products: 'Sold, by product',
  },
};
