import { crc32, deflateSync, inflateSync } from 'node:zlib';

/**
 * A picture of a screen as a small PNG: at most 32 colours, the most frequent ones, as flat screens
 * have few. Reads what browsers write (8 bits a channel, no interlacing) after the PNG
 * specification (W3C, third edition: 7.3 filters, 11.2 chunks).
 */
const COLOURS = 32;
const SIGNATURE = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);

interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green and blue, one 24-bit number a pixel. */
  readonly colours: Uint32Array;
}

export function smallPng(png: Buffer): Buffer {
  const { width, height, colours } = pixelsOf(png);
  const palette = mostFrequent(colours);
  const nearest = new Map<number, number>();
  const rows = Buffer.alloc((width + 1) * height);
  for (let at = 0; at < colours.length; at += 1) {
    const colour = colours[at] ?? 0;
    const known = nearest.get(colour) ?? nearestOf(colour, palette);
    nearest.set(colour, known);
    rows[at + Math.floor(at / width) + 1] = known;
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  // Eight bits a pixel, colours by palette.
  head.set([8, 3, 0, 0, 0], 8);
  const table = Buffer.from(palette.flatMap((rgb) => [rgb >> 16, (rgb >> 8) & 255, rgb & 255]));
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', head),
    chunk('PLTE', table),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

function pixelsOf(png: Buffer): Pixels {
  const parts: Buffer[] = [];
  let [width, height, channels] = [0, 0, 0];
  for (let at = SIGNATURE.length; at < png.length; ) {
    const length = png.readUInt32BE(at);
    const type = png.toString('latin1', at + 4, at + 8);
    const data = png.subarray(at + 8, at + 8 + length);
    if (type === 'IHDR') {
      [width, height] = [data.readUInt32BE(0), data.readUInt32BE(4)];
      channels = data[9] === 6 ? 4 : 3;
    }
    if (type === 'IDAT') parts.push(data);
    at += length + 12;
  }
  const bytes = unfiltered(inflateSync(Buffer.concat(parts)), width * channels, channels);
  const colours = new Uint32Array(width * height);
  for (let at = 0; at < colours.length; at += 1) {
    const from = at * channels;
    const [red = 0, green = 0, blue = 0] = bytes.subarray(from, from + 3);
    colours[at] = (red << 16) | (green << 8) | blue;
  }
  return { width, height, colours };
}

/** Each row says by which filter its bytes were written; left, above and above left undo it. */
function unfiltered(rows: Buffer, stride: number, channels: number): Buffer {
  const height = rows.length / (stride + 1);
  const plain = Buffer.alloc(stride * height);
  for (let row = 0; row < height; row += 1) {
    const filter = rows[row * (stride + 1)] ?? 0;
    for (let at = 0; at < stride; at += 1) {
      const to = row * stride + at;
      const left = at < channels ? 0 : (plain[to - channels] ?? 0);
      const above = row === 0 ? 0 : (plain[to - stride] ?? 0);
      const corner = row === 0 || at < channels ? 0 : (plain[to - stride - channels] ?? 0);
      const guess = guessBy(filter, left, above, corner);
      plain[to] = ((rows[to + row + 1] ?? 0) + guess) & 255;
    }
  }
  return plain;
}

function guessBy(filter: number, left: number, above: number, corner: number): number {
  if (filter === 1) return left;
  if (filter === 2) return above;
  if (filter === 3) return (left + above) >> 1;
  if (filter !== 4) return 0;
  const sum = left + above - corner;
  const [byLeft, byAbove, byCorner] = [sum - left, sum - above, sum - corner].map(Math.abs);
  if ((byLeft ?? 0) <= (byAbove ?? 0) && (byLeft ?? 0) <= (byCorner ?? 0)) return left;
  return (byAbove ?? 0) <= (byCorner ?? 0) ? above : corner;
}

function mostFrequent(colours: Uint32Array): number[] {
  const counted = new Map<number, number>();
  for (const colour of colours) counted.set(colour, (counted.get(colour) ?? 0) + 1);
  const sorted = [...counted].sort((a, b) => b[1] - a[1]);
  return sorted.slice(0, COLOURS).map(([colour]) => colour);
}

function nearestOf(colour: number, palette: readonly number[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [at, other] of palette.entries()) {
    const far = apart(colour, other);
    if (far < least) [best, least] = [at, far];
  }
  return best;
}

function apart(a: number, b: number): number {
  const [red, green, blue] = [16, 8, 0].map((bits) => ((a >> bits) & 255) - ((b >> bits) & 255));
  return (red ?? 0) ** 2 + (green ?? 0) ** 2 + (blue ?? 0) ** 2;
}
