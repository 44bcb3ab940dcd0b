import type { Report } from '../generated/report.js';

/** What was set otherwise than usual; nobody is to take a rule that was switched off for one that found nothing. */
export function settingsInWords({ settings: { severities = {}, ruleOptions = {} } = {} }: Report): string {
  const options = Object.entries(ruleOptions).flatMap(([rule, values]) =>
    Object.entries(values).map(([name, value]) => `${rule}.${name}=${value}`),
  );
  return [...Object.entries(severities).map(([rule, severity]) => `${rule}=${severity}`), ...options].join(', ');
}

/** Ids of the rules whose severity or options were set otherwise than usual. */
export function rulesSet({ settings: { severities = {}, ruleOptions = {} } = {} }: Report): string[] {
  return [...new Set([...Object.keys(severities), ...Object.keys(ruleOptions)])];
}
