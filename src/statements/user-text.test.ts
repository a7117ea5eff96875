import { describe, expect, it } from 'vitest';
import { userText } from './user-text.ts';

describe('text that people typed', () => {
  it('stays as it is where it is plain, markup included', () => {
    const typed = '#include "x" *bold* $x$ \\u{202e} <script> Ñandú Kő 中村';
    expect(userText(typed)).toBe(typed);
  });

  it('loses direction marks, zero-width marks and controls', () => {
    expect(userText('a\u202eb\u2066c\u200bd\ufeffe')).toBe('abcde');
    expect(userText('two\nlines\tand\u0000more')).toBe('two lines and more');
  });

  it('keeps the joiners that scripts need', () => {
    expect(userText('क\u200dष')).toBe('क\u200dष');
  });

  it('is isolated where it runs from right to left', () => {
    expect(userText('عمر')).toBe('\u2068عمر\u2069');
    expect(userText('ש. כהן')).toBe('\u2068ש. כהן\u2069');
  });

  it('mends a broken surrogate', () => {
    expect(userText('a\ud800b')).toBe('a\ufffdb');
  });
});
