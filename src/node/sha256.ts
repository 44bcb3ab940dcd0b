import { createHash } from 'node:crypto';
import type { Hasher } from '../jobs/checker.js';

/** SHA-256 by the platform. */
export function sha256(): Hasher {
  const hash = createHash('sha256');
  return {
    update: (bytes) => void hash.update(bytes),
    hex: () => hash.digest('hex'),
  };
}
