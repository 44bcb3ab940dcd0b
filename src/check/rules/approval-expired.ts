import { judgeTypes, typesInUse } from '../judge-types.js';
import { NO_TIME } from '../no-time.js';
import type { Rule } from '../rule.js';

export const approvalExpired: Rule = {
  id: 'approval-expired',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'The approval of a hole type has expired.',
  why: 'An inspector may refuse every anchor that was set by it, and its successor may ask for another depth or bit.',
  mend: 'Ask the trade for the approval in force and compare its numbers with those of the type.',
  accept: 'When the approval was in force when the anchors were bought, and those who judge the work take it.',
  needs: 'A last day of validity, and the time that the check is to take as now.',
  data: {
    holeType: 'id of the hole type',
    number: 'number of the approval',
    expires: 'its last day of validity',
    day: 'day that the check takes as today',
  },
  message: ({ holeType, number, expires, day }) =>
    `The approval "${number}" of type "${holeType}" was valid until ${expires}; it is ${day}.`,
  causeMessage: ({ number, expires, day }) =>
    `Hole types name the approval "${number}", which was valid until ${expires}; it is ${day}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "approval": { "number": "INV-0001", "expires": "2025-12-31" } }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "approval": { "number": "INV-0002", "expires": "2030-12-31" } }\n]',
  },
  checkSite(site, run) {
    const used = typesInUse(site);
    const day = run.asOf?.slice(0, 'YYYY-MM-DD'.length);
    judgeTypes(site, run, { readsLengths: false }, (type) => {
      const { id, approval } = type;
      if (approval?.expires === undefined || !used.has(type)) return undefined;
      if (day === undefined) return { leftOut: NO_TIME };
      const { number, expires } = approval;
      // Dates of four, two and two digits come in the order of their texts.
      if (expires >= day) return 'passed';
      const data = { holeType: id, number, expires, day };
      return { finding: { member: 'approval/expires', data, cause: `${number} ${expires}` } };
    });
  },
};
