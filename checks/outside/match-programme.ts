/** Lines and receipts by day (a number) and amount (minor units above 0). */
export interface ToExplain {
  readonly lines: readonly { readonly day: number; readonly cents: number }[];
  readonly receipts: readonly { readonly day: number; readonly cents: number }[];
  /** A receipt may be part of a line so many days later, and no earlier. */
  readonly days: number;
}

/**
 * Which receipts make up which line, as an integer programme in LP format: as many lines as can be,
 * each by receipts that add up to it exactly, no receipt twice, and then as few receipts as can be.
 * Written apart from the matching that it checks; a line is worth more than all receipts.
 */
export function matchProgramme({ lines, receipts, days }: ToExplain): string {
  const worth = receipts.length + 1;
  const pairs = lines.flatMap((line, at) =>
    receipts.flatMap((receipt, place) => {
      const apart = line.day - receipt.day;
      return apart < 0 || apart > days ? [] : [{ at, place, name: `x${at}_${place}` }];
    }),
  );
  const sums = lines.map(({ cents }, at) => {
    const terms = pairs
      .filter((pair) => pair.at === at)
      .map(({ place, name }) => `${receipts[place]?.cents ?? 0} ${name}`);
    return ` s${at}: ${[...terms, `- ${cents} y${at}`].join(' + ').replace('+ -', '-')} = 0`;
  });
  const once = receipts.flatMap((_, place) => {
    const names = pairs.filter((pair) => pair.place === place).map(({ name }) => name);
    return names.length === 0 ? [] : [` r${place}: ${names.join(' + ')} <= 1`];
  });
  const goal = [
    ...lines.map((_, at) => `${worth} y${at}`),
    ...pairs.map(({ name }) => `- ${name}`),
  ];
  const all = [...lines.map((_, at) => `y${at}`), ...pairs.map(({ name }) => name)];
  return [
    'Maximize',
    ` obj: ${goal.join(' + ').replaceAll('+ -', '-')}`,
    'Subject To',
    ...sums,
    ...once,
    'Binary',
    ` ${all.join(' ')}`,
    'End',
    '',
  ].join('\n');
}
