import { describe, expect, it } from 'vitest';
import { FileTrouble, reasonOf } from '../../src/node/file-trouble.js';

describe('trouble with a file', () => {
  it('is told in plain words where the system gives a known code', () => {
    for (const code of [
      'ENOENT',
      'EACCES',
      'EPERM',
      'EISDIR',
      'ENOTDIR',
      'EMFILE',
      'ENAMETOOLONG',
      'ENOSPC',
      'EROFS',
      'EEXIST',
    ]) {
      const words = reasonOf(Object.assign(new Error('system text'), { code }));
      expect(words).toMatch(/^[a-z][a-z -]+$/);
      expect(words).not.toContain('system text');
    }
  });

  it('is told in the words of the system otherwise', () => {
    expect(reasonOf(Object.assign(new Error('EIO: i/o error'), { code: 'EIO' }))).toBe('EIO: i/o error');
    expect(reasonOf('strange')).toBe('strange');
  });

  it('has the exit code of what cannot be read or written', () => {
    expect(new FileTrouble('x').exitCode).toBe(3);
  });
});
