// The main job on the examples: a point list becomes a layout, is checked, and goes on as GeoJSON.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'out', 'demo');
mkdirSync(out, { recursive: true });

const terminal = 'examples/ferry-terminal';
const made = relative(root, join(out, 'sprinkler.ahx.json'));
/** @type {[string, string[]][]} */
const steps = [
  [
    'A trade sends a point list. It becomes a layout:',
    ['convert', `${terminal}/sprinkler-points.csv`, made, '--profile', `${terminal}/sprinkler.profile.json`, '--force'],
  ],
  ['The layout is checked together with that of the other trade:', ['check', made, `${terminal}/duct.ahx.json`]],
  ['A poor layout, to see what is said about it:', ['check', 'examples/poor/poor.ahx.json']],
  ['The good one goes on as GeoJSON:', ['convert', made, relative(root, join(out, 'sprinkler.geojson')), '--force']],
];

for (const [title, args] of steps) {
  console.log(`\n${title}\n$ ahx ${args.join(' ')}`);
  const { status, error } = spawnSync(process.execPath, [join(root, 'dist/cli.cjs'), ...args], {
    cwd: root,
    stdio: 'inherit',
  });
  const expected = args[1] === 'examples/poor/poor.ahx.json' ? 1 : 0;
  if (error !== undefined || status !== expected) {
    console.error(`The demo stopped: exit code ${status}, expected ${expected}.`, error ?? '');
    process.exit(1);
  }
}
console.log(`\nThe results are in ${relative(process.cwd(), out) || '.'}: sprinkler.ahx.json and sprinkler.geojson.`);
