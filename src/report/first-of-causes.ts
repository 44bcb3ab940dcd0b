import type { Finding, Report } from '../generated/report.js';

/** The first findings of each cause, by its number, in the order of the report; a cause without listed ones has none. */
export function firstOfCauses({ findings }: Report, most: number): ReadonlyMap<number, readonly Finding[]> {
  const first = new Map<number, Finding[]>();
  for (const finding of findings) {
    const known = first.get(finding.cause);
    if (known === undefined) first.set(finding.cause, [finding]);
    else if (known.length < most) known.push(finding);
  }
  return first;
}
