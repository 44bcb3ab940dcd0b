import { describe, expect, it } from 'vitest';
import { sniffKind } from '../../src/read/sniff-kind.js';
import { padded } from './padded.js';

function kindOf(text: string): string | undefined {
  const { bytes, limit } = padded(text);
  return sniffKind(bytes, limit).kind;
}

describe('sniffKind', () => {
  it('finds the kind wherever it stands among the members of the root', () => {
    expect(kindOf('{"kind":"layout"}')).toBe('layout');
    expect(kindOf('\n{ "ahx" : "0.1" ,\n "kind" : "report" , "x"')).toBe('report');
    expect(kindOf('{"a":{"kind":"no"},"b":["kind",{}],"c":-1.5e3,"d":null,"kind":"column-profile","e":1}')).toBe(
      'column-profile',
    );
  });

  it('reads past a byte order mark, and escapes in names and values', () => {
    expect(kindOf('\ufeff{"kind":"layout"}')).toBe('layout');
    expect(kindOf('{"\\u006bind":"l\\u0061yout"}')).toBe('layout');
  });

  it('needs no more of the text than the kind', () => {
    expect(kindOf('{"kind":"layout","holes":[{"id"')).toBe('layout');
    expect(kindOf('{"kind":"layout"')).toBe('layout');
    expect(kindOf('{"kind":"lay')).toBeUndefined();
    expect(kindOf('{"a":[1,2')).toBeUndefined();
  });

  it('says nothing where the root names no kind', () => {
    for (const text of [
      '',
      ' ',
      '[]',
      '"kind"',
      '12',
      '{}',
      '{"a":1}',
      '{"kind":1}',
      '{"kind":{"kind":"layout"}}',
      '{kind:"x"}',
      '{"a" "kind"}',
      '\u0000',
    ]) {
      expect([text, kindOf(text)]).toEqual([text, undefined]);
    }
  });

  it('finds the version as well, in any order', () => {
    const { bytes, limit } = padded('{"kind":"layout","x":[1],"ahx":"0.2"}');
    expect(sniffKind(bytes, limit)).toEqual({ kind: 'layout', kindByte: 8, ahx: '0.2' });
  });
});
