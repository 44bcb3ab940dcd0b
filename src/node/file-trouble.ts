/** A file that the system does not let be read or written; the message says which and why. */
export class FileTrouble extends Error {
  readonly exitCode = 3;
}

/** Why the system refused, in plain words. */
export function reasonOf(cause: unknown): string {
  const code = (cause as NodeJS.ErrnoException).code ?? '';
  const words: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file or folder',
    EACCES: 'no permission',
    EPERM: 'no permission',
    EISDIR: 'it is a folder',
    ENOTDIR: 'a part of its path is no folder',
    EMFILE: 'too many files are open',
    ENAMETOOLONG: 'its name is too long',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk is read-only',
    EEXIST: 'it exists already',
  };
  return words[code] ?? (cause instanceof Error ? cause.message : String(cause));
}
