import type { Block, Column, Paper, TableBlock } from '../statements/paper.ts';
import { isWidthCertain, textWidth } from './text-width.ts';

/**
 * Gives every table the widths of its columns and the heights of its rows in points, from the
 * characters in them. Left to itself the typesetter lays each cell out several times to find
 * these, which took more than half the time of a paper. A row whose text may need a second line
 * keeps a height of its own.
 */

const CELL_PT = 9;
const HEAD_PT = 8;
/** The outline of stronger text takes a little room. */
const STRONG = 1.06;
/** Room beside a text, as `inset` in paper.typ gives it. */
const GAP_PT = 10;
const BOX_PT = 68;
/** The column of words beside many boxes. */
const BESIDE_BOXES_PT = 96;
/** Longer text wraps inside its column. */
const TEXT_MAX_PT = 120;
const TEXT_MAX_NARROW_PT = 270;
/** A head that is longer is set on two lines. */
const HEAD_ONE_LINE_PT = 56;
/** Between the margins of paper.typ on the narrower paper, A4: 180 mm. */
const PAGE_PT = 510;
/** One line of 9 points with the room above and below it that paper.typ gives a cell. */
const ROW_PT = 13;
/** Kerning may set a text a little wider than the sum of its characters. */
const KERNING = 1.02;

/** `grow` takes the room that is left. */
export type ColumnWidth = number | 'grow';
/** `auto` is as high as its text needs. */
export type RowHeight = number | 'auto';

export type LaidOutTable = TableBlock & {
  readonly widths: readonly ColumnWidth[];
  /** Of the rows alone; head and totals are as high as they need. */
  readonly heights: readonly RowHeight[];
};

export type LaidOutBlock = Exclude<Block, TableBlock> | LaidOutTable;

export function laidOut(paper: Paper): Omit<Paper, 'blocks'> & {
  readonly blocks: readonly LaidOutBlock[];
} {
  return { ...paper, blocks: paper.blocks.map(laidOutBlock) };
}

function laidOutBlock(block: Block): LaidOutBlock {
  if (block.block !== 'table') return block;
  const texts = block.rows.map((row) => row.map((text) => textWidth(text, CELL_PT) * KERNING));
  const widths = widthsOf(block, texts);
  return { ...block, widths, heights: heightsOf(block, texts, widths) };
}

/** Points that each cell's text takes in one line. */
type TextWidths = readonly (readonly number[])[];

function widthsOf(table: TableBlock, texts: TextWidths): ColumnWidth[] {
  const lastText = table.columns.findLastIndex((column) => column.shows === 'text');
  const boxes = table.columns.filter(({ shows }) => shows === 'box').length;
  const boxWidth = Math.min(BOX_PT, Math.floor((PAGE_PT - BESIDE_BOXES_PT) / Math.max(1, boxes)));
  // Without heads the rows say what is written beside them: the room is for the hand.
  const isForm = table.columns.every(({ head }) => head === '');
  const textMax = table.narrow === true ? TEXT_MAX_NARROW_PT : TEXT_MAX_PT;
  return table.columns.map((column, at) => {
    if (column.shows === 'box') return isForm ? 'grow' : boxWidth;
    if (at === lastText && !isForm && table.narrow !== true) return 'grow';
    const cells = texts.map((row) => row[at] ?? 0);
    const totals = (table.totals ?? []).map((row) => textWidth(row[at] ?? '', CELL_PT) * STRONG);
    return columnWidth(column, Math.max(0, ...cells, ...totals), textMax);
  });
}

function columnWidth(column: Column, body: number, textMax: number): number {
  const content = column.shows === 'number' ? body : Math.min(body, textMax);
  return Math.ceil(Math.max(headWidth(column.head), content) + GAP_PT);
}

function headWidth(head: string): number {
  const width = (words: readonly string[]) => textWidth(words.join(' '), HEAD_PT) * STRONG;
  const words = head.split(' ');
  const whole = width(words);
  if (whole <= HEAD_ONE_LINE_PT) return whole;
  // The best of all ways to set the words on two lines.
  const ways = words.map((_word, cut) =>
    Math.max(width(words.slice(0, cut)), width(words.slice(cut))),
  );
  return Math.min(whole, ...ways);
}

function heightsOf(
  table: TableBlock,
  texts: TextWidths,
  widths: readonly ColumnWidth[],
): RowHeight[] {
  if (table.columns.some((column) => column.shows === 'box')) return table.rows.map(() => 'auto');
  const taken = widths.reduce<number>((sum, width) => sum + (width === 'grow' ? 0 : width), 0);
  const rooms = widths.map((width) => (width === 'grow' ? PAGE_PT - taken : width) - GAP_PT);
  return table.rows.map((row, at) => {
    const fits = texts[at]?.every((width, column) => width <= (rooms[column] ?? 0));
    return fits === true && isWidthCertain(row.join('')) ? ROW_PT : 'auto';
  });
}
