import { parentPort, workerData } from 'node:worker_threads';
import { validateWhole, validateLayoutMember, validateRecord } from '../../src/generated/validators.js';

/** Whether the worker is as strict as it is meant to be: without this the rest would prove nothing. */
function evaluates() {
  try {
    return new Function('return true')();
  } catch {
    return false;
  }
}

const { layout, profile } = workerData;
const holes = layout.holes.map((/** @type {unknown} */ hole) => validateRecord.holes(hole));
const members = Object.entries(layout).filter(([name, value]) => !validateLayoutMember[name](value));
const isWrongFound = !validateRecord.holes({ ...layout.holes[0], point: [1] });
parentPort?.postMessage({
  evaluates: evaluates(),
  hasRequire: typeof require === 'function',
  holes,
  membersAtFault: members.map(([name]) => name),
  profile: validateWhole['column-profile'](profile),
  wrongHole:
    isWrongFound &&
    validateRecord.holes.errors?.map(({ keyword, instancePath, schemaPath }) => [keyword, instancePath, schemaPath]),
});
