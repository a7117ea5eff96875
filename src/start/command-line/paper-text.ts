import type { Block, Paper } from '../../statements/paper.ts';
import { textTable } from './text-table.ts';

/** A paper as plain text for the screen: the same blocks in the same order. */
export function paperText(paper: Paper): string {
  const facts = paper.facts.map((fact) => `${fact.label}: ${fact.value}\n`).join('');
  const blocks = paper.blocks.map(blockText).join('\n');
  return `${paper.over}\n${paper.title}\n\n${facts}\n${blocks}`;
}

function blockText(block: Block): string {
  switch (block.block) {
    case 'lead':
    case 'heading':
    case 'words':
      return `${block.text}\n`;
    case 'table': {
      const figures = block.columns.flatMap((column, index) =>
        column.shows === 'number' ? [index] : [],
      );
      const heads = block.columns.map((column) => column.head);
      return textTable(heads, [...block.rows, ...(block.totals ?? [])], new Set(figures));
    }
    case 'signatures':
      return block.places
        .map((place) => `${place.label}: ${place.lines.join(' / ')} ________\n`)
        .join('');
  }
}
