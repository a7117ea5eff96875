import type { Block, Column, Paper, TableBlock } from '../statements/paper.ts';

/**
 * Gives every table the widths of its columns in points, from the characters in them. Left to
 * itself the typesetter lays each cell out several times to find these widths, which took half the
 * time of a paper. Widths are a little on the wide side; text that is longer wraps.
 */

const CELL_PT = 9;
const HEAD_PT = 8;
/** Bold letters are this much wider. */
const BOLD = 1.09;
const GAP_PT = 10;
const BOX_PT = 68;
/** Longer text wraps inside its column. */
const TEXT_MAX_PT = 120;
const TEXT_MAX_NARROW_PT = 270;
/** The least room for the first of two stacks. */
const BESIDE_MIN_PT = 160;
/** A head that is longer is set on two lines. */
const HEAD_ONE_LINE_PT = 56;

/** Widths of Noto Sans in thousandths of the type size, by class of character, about right. */
const WIDTHS: readonly (readonly [characters: RegExp, width: number])[] = [
  [/[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60]/u, 1000],
  [/[mwMW\u2014]/u, 920],
  [/[A-HJ-Z]/u, 660],
  [/[0-9$]/u, 572],
  [/[ .,:;'|!iIlj()[\]\-\u00b7]/u, 280],
  [/[frt]/u, 390],
];
const WIDTH_OTHER = 565;

/** `grow` takes the room that is left. */
export type ColumnWidth = number | 'grow';

export type LaidOutBlock =
  | Exclude<Block, TableBlock | { block: 'beside' }>
  | (TableBlock & { readonly widths: readonly ColumnWidth[] })
  | {
      readonly block: 'beside';
      readonly first: readonly LaidOutBlock[];
      readonly second: readonly LaidOutBlock[];
      /** Points for the first stack. */
      readonly width: number;
    };

export function laidOut(paper: Paper): Omit<Paper, 'blocks'> & {
  readonly blocks: readonly LaidOutBlock[];
} {
  return { ...paper, blocks: paper.blocks.map(laidOutBlock) };
}

function laidOutBlock(block: Block): LaidOutBlock {
  if (block.block === 'table') return { ...block, widths: widthsOf(block) };
  if (block.block !== 'beside') return block;
  const first = block.first.map(laidOutBlock);
  const tables = first.map((one) => (one.block === 'table' ? sumOf(one.widths) : 0));
  return {
    block: 'beside',
    first,
    second: block.second.map(laidOutBlock),
    width: Math.max(...tables, BESIDE_MIN_PT),
  };
}

function widthsOf(table: TableBlock): ColumnWidth[] {
  const lastText = table.columns.findLastIndex((column) => column.shows === 'text');
  return table.columns.map((column, at) => {
    if (column.shows === 'box') return BOX_PT;
    if (at === lastText && table.narrow !== true) return 'grow';
    const textMax = table.narrow === true ? TEXT_MAX_NARROW_PT : TEXT_MAX_PT;
    return columnWidth(column, bodyWidth(table, at), textMax);
  });
}

function bodyWidth(table: TableBlock, at: number): number {
  const cells = table.rows.map((row) => widthOf(row[at] ?? '', CELL_PT));
  const totals = (table.totals ?? []).map((row) => widthOf(row[at] ?? '', CELL_PT * BOLD));
  return Math.max(0, ...cells, ...totals);
}

function columnWidth(column: Column, body: number, textMax: number): number {
  const content = column.shows === 'number' ? body : Math.min(body, textMax);
  return Math.ceil(Math.max(headWidth(column.head), content) + GAP_PT);
}

function headWidth(head: string): number {
  const whole = widthOf(head, HEAD_PT * BOLD);
  if (whole <= HEAD_ONE_LINE_PT) return whole;
  const words = head.split(' ');
  // The best of all ways to set the words on two lines.
  const ways = words.map((_word, cut) =>
    Math.max(
      widthOf(words.slice(0, cut).join(' '), HEAD_PT * BOLD),
      widthOf(words.slice(cut).join(' '), HEAD_PT * BOLD),
    ),
  );
  return Math.min(whole, ...ways);
}

/** Points that a text takes in one line. */
function widthOf(text: string, size: number): number {
  let thousandths = 0;
  for (const character of text) thousandths += characterWidth(character);
  return (thousandths * size) / 1000;
}

const known = new Map<string, number>();

function characterWidth(character: string): number {
  let width = known.get(character);
  if (width === undefined) {
    width = WIDTHS.find(([characters]) => characters.test(character))?.[1] ?? WIDTH_OTHER;
    known.set(character, width);
  }
  return width;
}

function sumOf(widths: readonly ColumnWidth[]): number {
  return widths.reduce<number>((sum, width) => sum + (width === 'grow' ? 0 : width), 0);
}
