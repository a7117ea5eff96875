import { type Frame, frames } from './line-frames.ts';
import type { LineKind } from './line-kind.ts';
import type { Piece } from './line-pieces.ts';

/** The ways to cut a line into pieces that a kind of record has a place for. */
export interface Path {
  readonly pieces: readonly Piece[];
  readonly cost: number;
}

export interface Paths {
  readonly paths: readonly Path[];
  /** The first word that no way gets past; only where there is no path. */
  readonly stuckAt: number;
}

/** Bounds for lines that were made to be hard; a line that a person writes needs a few dozen. */
const STEPS_MAX = 20_000;
const PATHS_MAX = 200;

/** @param starts the pieces that begin at each word @param hasVerb the line says what happened */
export function pathsFor(
  kind: LineKind,
  starts: readonly (readonly Piece[])[],
  hasVerb: boolean,
): Paths {
  const frame = frames[kind];
  const usable = starts.map((pieces) =>
    pieces
      .filter((piece) => hasPlace(piece, kind, frame) && (hasVerb || piece.is !== 'verb'))
      .sort((a, b) => a.cost - b.cost || b.length - a.length),
  );
  const paths: Path[] = [];
  let stuckAt = 0;
  let steps = 0;
  const walk = (at: number, pieces: readonly Piece[], cost: number, verbs: number): void => {
    stuckAt = Math.max(stuckAt, at);
    steps += 1;
    if (steps > STEPS_MAX || paths.length >= PATHS_MAX) return;
    if (at === usable.length) {
      if (verbs === (hasVerb ? 1 : 0)) paths.push({ pieces, cost });
      return;
    }
    for (const piece of usable[at] ?? []) {
      const isVerb = piece.is === 'verb';
      if (isVerb && verbs > 0) continue;
      walk(at + piece.length, [...pieces, piece], cost + piece.cost, verbs + (isVerb ? 1 : 0));
    }
  };
  walk(0, [], 0, 0);
  return { paths: [...paths].sort((a, b) => a.cost - b.cost), stuckAt };
}

function hasPlace(piece: Piece, kind: LineKind, frame: Frame): boolean {
  switch (piece.is) {
    case 'verb':
      return piece.kind === kind;
    case 'name':
      if (piece.of === 'seller') return frame.sellers !== undefined;
      return piece.of === 'product' ? frame.goods !== undefined : frame.other === piece.of;
    case 'number':
      return frame.goods !== undefined || frame.amount !== undefined;
    case 'all':
      return frame.amount === 'one' && frame.sellers === 'one';
    case 'unit':
      return frame.goods !== undefined;
    case 'tender':
      return frame.tender === true;
    case 'labelled':
      return frame.amounts?.includes(piece.label) === true;
    case 'text':
      return frame.texts?.includes(piece.label) === true;
    case 'way':
      return frame.sellers === 'two' || frame.other === 'neighbour';
    case 'place':
      return frame.places?.includes(piece.place) === true;
    case 'section':
      return frame.goods === 'parts';
    case 'day':
    case 'filler':
      return true;
  }
}
