import type { Config } from '../generated/config.js';
import type { Severity } from '../model/observation.js';
import type { Purpose } from '../model/rule.js';

/** What a config says of a check, under the names that a check knows. */
export interface ConfigOptions {
  purpose?: Purpose;
  sampleLimit?: number;
  severities?: Record<string, Severity | 'off'>;
  ruleOptions?: Record<string, Record<string, number>>;
}

/** The part of a config that a check takes; what a caller sets besides goes before it, rule by rule. */
export function configOptions({ purpose, limit, severities, ruleOptions }: Config): ConfigOptions {
  return {
    ...(purpose !== undefined && { purpose }),
    ...(limit !== undefined && { sampleLimit: limit }),
    ...(severities !== undefined && { severities: severities as Record<string, Severity | 'off'> }),
    ...(ruleOptions !== undefined && { ruleOptions: ruleOptions as Record<string, Record<string, number>> }),
  };
}
