import { spawnSync } from 'node:child_process';

/*
 * Does locally all that CI does, in the order in which a fault is cheapest to see. Tests come last:
 * their closing line is the last line of the whole.
 */

const steps: readonly [name: string, command: string][] = [
  ['generated files are fresh', 'tsx src/build/generate.ts --check'],
  ['types', 'npm run --silent typecheck'],
  ['lint', 'npm run --silent lint'],
  ['format', 'biome format'],
  ['build', 'npm run --silent build'],
  ['manifest', 'publint --strict'],
  ['packed command', 'tsx src/build/check-packed.ts'],
  ['API pages', 'npm run --silent docs'],
  ['tests', 'npm run --silent test'],
];

for (const [name, command] of steps) {
  console.log(`\n== ${name}`);
  const { status } = spawnSync(command, { shell: true, stdio: 'inherit' });
  if (status !== 0) {
    console.error(`\ncheck failed at: ${name} (${command})`);
    process.exit(1);
  }
}
