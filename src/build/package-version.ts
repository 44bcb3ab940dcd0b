import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { GENERATED_NOTE, type GeneratedFiles } from './generator.js';

/** Name and version of the package, for reports and `ahx --version`. */
export function packageVersionFiles(root: string): GeneratedFiles {
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<string, string>;
  return {
    'src/generated/package-version.ts': `${GENERATED_NOTE}
/** Name of the package. */
export const PACKAGE_NAME = '${name}';
/** Version of the package. */
export const PACKAGE_VERSION = '${version}';
`,
  };
}
