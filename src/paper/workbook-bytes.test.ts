import { inflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { workbookBytes } from './workbook-bytes.ts';

describe('the workbook file', () => {
  it('is a zip file whose sheets hold the figures as numbers and typed text as text', async () => {
    const bytes = await workbookBytes([
      { name: 'One', widths: [10], rows: [['Head'], ['=1+1'], [{ whole: -1250, digits: 2 }]] },
    ]);
    const sheet = partOf(bytes, 'xl/worksheets/sheet1.xml');
    expect(sheet).toContain('<v>-12.5</v>');
    expect(sheet).not.toContain('<f>');
  });
});

/** One file out of a zip file, found by its entry in the central directory (APPNOTE 4.3.12). */
function partOf(bytes: Uint8Array, name: string): string {
  const zip = Buffer.from(bytes);
  for (
    let at = zip.indexOf('PK\u0001\u0002');
    at >= 0;
    at = zip.indexOf('PK\u0001\u0002', at + 4)
  ) {
    const nameLength = zip.readUInt16LE(at + 28);
    if (zip.toString('utf8', at + 46, at + 46 + nameLength) !== name) continue;
    const local = zip.readUInt32LE(at + 42);
    const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const packed = zip.subarray(start, start + zip.readUInt32LE(at + 20));
    return (zip.readUInt16LE(at + 10) === 0 ? packed : inflateRawSync(packed)).toString('utf8');
  }
  return '';
}
