/**
 * Messages that are made in English, far from any screen (refusals, findings), in another language:
 * the message is held against the known templates, and what stood in their places is put into the
 * translation, itself translated where it is known. What fits no template stays as it came.
 */
export function toldIn(templates: Readonly<Record<string, string>>): (english: string) => string {
  let patterns: readonly (readonly [RegExp, string])[] | undefined;
  const tell = (english: string): string => {
    // What stood in a place can be an id of the group's own, like `constructor`.
    const exact = Object.hasOwn(templates, english) ? templates[english] : undefined;
    if (exact !== undefined) return exact;
    patterns ??= Object.entries(templates).filter(hasPlaces).sort(byFixedText).map(asPattern);
    for (const [pattern, translated] of patterns) {
      const found = pattern.exec(english);
      if (found !== null) {
        return translated.replace(/\{(\d+)\}/g, (_, at: string) =>
          tell(found.groups?.[`p${at}`] ?? ''),
        );
      }
    }
    return english;
  };
  return tell;
}

type Row = readonly [template: string, translated: string];

const hasPlaces = ([template]: Row): boolean => template.includes('{');

/** The template with the most text of its own first: it is the one that was meant. */
function byFixedText([a]: Row, [b]: Row): number {
  return fixedText(b).length - fixedText(a).length || (a < b ? -1 : 1);
}

function fixedText(template: string): string {
  return template.replace(/\{\d+\}/g, '');
}

function asPattern([template, translated]: Row): readonly [RegExp, string] {
  // Split by a pattern with one group, every other piece is the number of a place.
  const source = template
    .split(/\{(\d+)\}/)
    .map((piece, at) => (at % 2 === 1 ? `(?<p${piece}>.+?)` : escaped(piece)))
    .join('');
  return [new RegExp(`^${source}$`, 'su'), translated];
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
