import type { PdfDictionary, PdfObjects, PdfValue } from './pdf-objects.ts';

/**
 * ISO 14289-1:2014 (PDF/UA-1) looked for in what qpdf reads, apart from the typesetter's own check.
 * Clause numbers as the Matterhorn Protocol 1.1 (PDF Association) gives them, from memory. It looks
 * at what our papers use: text, headings, tables, page feet. Pictures, links, forms and lists do
 * not occur in them.
 */
export function againstPdfUa(pdf: PdfObjects): string[] {
  const elements = structure(pdf);
  return [
    ...ofTheFile(pdf),
    ...ofTheContent(pdf, elements),
    ...ofHeadings(elements),
    ...ofTables(pdf, elements),
    ...ofFonts(pdf),
  ];
}

/** One element of the tag tree, in reading order. */
interface Element {
  readonly tag: string;
  readonly own: PdfDictionary;
  /** Pieces of page content that belong to it: page and number. */
  readonly content: readonly string[];
  readonly parents: readonly string[];
}

function ofTheFile(pdf: PdfObjects): string[] {
  const { catalog } = pdf;
  const metadata = Buffer.from(pdf.stream(catalog['/Metadata']), 'latin1').toString('utf8');
  const mark = pdf.dictionary(catalog['/MarkInfo']);
  const viewer = pdf.dictionary(catalog['/ViewerPreferences']);
  return failing([
    ['5 says that it is PDF/UA-1', /<pdfuaid:part>1<\/pdfuaid:part>/.test(metadata)],
    ['6.2 is marked', mark['/Marked'] === true],
    ['7.1 suspects nothing', mark['/Suspects'] !== true],
    ['7.1 has a title', /<dc:title>[\s\S]*<rdf:li[^>]*>[^<]+<\/rdf:li>/.test(metadata)],
    ['7.1 shows the title', viewer['/DisplayDocTitle'] === true],
    ['7.1 has a tag tree', pdf.list(catalog['/StructTreeRoot']).length === 1],
    ['7.2 names its language', /^u:[a-z]{2,3}(-|$)/.test(String(catalog['/Lang'] ?? ''))],
  ]);
}

/** 7.1: content is tagged once or an artifact; 7.8: page feet are artifacts of pagination. */
function ofTheContent(pdf: PdfObjects, elements: readonly Element[]): string[] {
  const faults: string[] = [];
  const tagged = elements.flatMap((element) => element.content);
  if (new Set(tagged).size !== tagged.length) faults.push('7.1 content stands in two tags');
  const drawn = new Set<string>();
  for (const page of pagesOf(pdf)) {
    const { pieces, loose, feet } = contentOf(pdf, page);
    if (loose > 0) faults.push('7.1 text is neither tagged nor an artifact');
    if (feet === 0 && pieces.length > 0) faults.push('7.8 the foot is no artifact');
    for (const piece of pieces) drawn.add(`${page} ${piece}`);
  }
  if (tagged.some((piece) => !drawn.has(piece))) faults.push('7.1 a tag has no content');
  if ([...drawn].some((piece) => !tagged.includes(piece))) faults.push('7.1 content has no tag');
  return faults;
}

interface PageContent {
  /** Numbers of the marked pieces. */
  readonly pieces: readonly number[];
  /** Texts drawn outside of any piece and artifact. */
  readonly loose: number;
  readonly feet: number;
}

/** Walks a page's operators; strings are taken out first, so that no text is read as one. */
function contentOf(pdf: PdfObjects, page: string): PageContent {
  const streams = pdf.list(pdf.dictionary(page)['/Contents']).map((one) => pdf.stream(one));
  const bare = streams.join('\n').replace(/\((?:\\[\s\S]|[^\\)])*\)|<(?!<)[0-9A-Fa-f\s]*>/g, '()');
  const pieces: number[] = [];
  const open: string[] = [];
  let loose = 0;
  let feet = 0;
  for (const [token, tag = '', properties = ''] of bare.matchAll(
    /\/(\w+)\s*(<<[\s\S]*?>>)?\s*(?:BDC|BMC)|\bEMC\b|\bT[jJ]\b/g,
  )) {
    if (token === 'EMC') open.pop();
    else if (token === 'Tj' || token === 'TJ') loose += open.length === 0 ? 1 : 0;
    else {
      const piece = /\/MCID (\d+)/.exec(properties)?.[1];
      if (piece !== undefined) pieces.push(Number(piece));
      if (tag === 'Artifact' && /\/Type \/Pagination/.test(properties)) feet += 1;
      open.push(tag);
    }
  }
  return { pieces, loose, feet };
}

/** 7.4.2: headings begin with the first level and leave none out on the way down. */
function ofHeadings(elements: readonly Element[]): string[] {
  const levels = elements.flatMap(({ tag }) => /^H(\d)$/.exec(tag)?.[1] ?? []).map(Number);
  const skips = levels.some((level, at) => level > (levels[at - 1] ?? 0) + 1);
  return failing([
    ['7.4.2 has a first heading', levels[0] === 1],
    ['7.4.2 leaves out no level', !skips],
  ]);
}

/** 7.5: heads say what they are the head of; rows and cells stand where they belong. */
function ofTables(pdf: PdfObjects, elements: readonly Element[]): string[] {
  const heads = elements.filter((element) => element.tag === 'TH');
  const isScoped = (head: Element) =>
    pdf.list(head.own['/A']).some((attribute) => '/Scope' in pdf.dictionary(attribute));
  const tables = elements.filter((element) => element.tag === 'Table').length;
  const parentOf = (element: Element) => element.parents.at(-1) ?? '';
  const stands = (tag: string, within: readonly string[]) =>
    elements.every((element) => element.tag !== tag || within.includes(parentOf(element)));
  return failing([
    ['7.5 a table has heads', tables === 0 || heads.length > 0],
    ['7.5 every head has a scope', heads.every(isScoped)],
    ['7.5 cells stand in rows', stands('TD', ['TR']) && stands('TH', ['TR'])],
    ['7.5 rows stand in tables', stands('TR', ['Table', 'THead', 'TBody', 'TFoot'])],
  ]);
}

/** 7.21.4.1: fonts are embedded; 7.21.7: their glyphs have Unicode values. */
function ofFonts(pdf: PdfObjects): string[] {
  const fonts = pdf.ofType('/Font');
  const descriptors = pdf.ofType('/FontDescriptor');
  const shown = fonts.filter((font) => font['/Subtype'] === '/Type0');
  const isEmbedded = (font: PdfDictionary) => '/FontFile2' in font || '/FontFile3' in font;
  return failing([
    ['7.21.4.1 embeds its fonts', descriptors.length > 0 && descriptors.every(isEmbedded)],
    ['7.21.7 maps glyphs to Unicode', shown.every((font) => '/ToUnicode' in font)],
  ]);
}

function failing(checks: readonly (readonly [name: string, holds: boolean])[]): string[] {
  return checks.filter(([, holds]) => !holds).map(([name]) => `not so: ${name}`);
}

function pagesOf(pdf: PdfObjects): string[] {
  const below = (node: PdfValue): string[] => {
    const kids = pdf.dictionary(node)['/Kids'];
    return kids === undefined ? [String(node)] : pdf.list(kids).flatMap(below);
  };
  return below(pdf.catalog['/Pages'] ?? null);
}

function structure(pdf: PdfObjects): Element[] {
  const root = pdf.dictionary(pdf.catalog['/StructTreeRoot']);
  const roles = pdf.dictionary(root['/RoleMap']);
  const elements: Element[] = [];
  const walk = (node: PdfValue, parents: readonly string[]): void => {
    const own = pdf.dictionary(node);
    if (typeof own['/S'] !== 'string') return;
    const tag = String(roles[own['/S']] ?? own['/S']).slice(1);
    const kids = pdf.list(own['/K']);
    const content = kids.flatMap((kid) => {
      if (typeof kid === 'number') return [`${String(own['/Pg'])} ${kid}`];
      const { '/MCID': piece, '/Pg': page } = pdf.dictionary(kid);
      return typeof piece === 'number' ? [`${String(page ?? own['/Pg'])} ${piece}`] : [];
    });
    elements.push({ tag, own, content, parents });
    for (const kid of kids) walk(kid, [...parents, tag]);
  };
  for (const kid of pdf.list(root['/K'])) walk(kid, []);
  return elements;
}
