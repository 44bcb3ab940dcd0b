import type { Display } from '../generated/layout.js';
import type { Say } from '../model/rule.js';
import { formatFeetInches } from '../units/format-feet-inches.js';
import { formatLength } from '../units/format-length.js';

/** What fails misses its limit by more than 0.0005 mm, so that it differs from the limit in these. */
const MOST_DECIMALS_MM = 4;

/** In place of a length that is no number that can be written: the rest of the message still tells its part. */
const UNREADABLE = '? mm';

/**
 * Writes lengths as the people of a project read them.
 *
 * Millimetres always stand there: a length that was rounded to a fraction of an inch can look equal to the
 * limit that it misses.
 */
export function sayAs(display: Display | undefined): Say {
  return {
    length(value) {
      const mm = typeof value === 'number' ? value : Number.NaN;
      if (!Number.isFinite(mm)) return UNREADABLE;
      const exact = `${formatLength(mm, { unit: 'mm', decimals: MOST_DECIMALS_MM })} mm`;
      if (display === undefined || display.length === 'mm') return exact;
      if (display.length === 'ft-in') return `${formatFeetInches(mm, display.fraction ?? 64)} (${exact})`;
      const text = formatLength(mm, { unit: display.length, decimals: display.decimals ?? 4 });
      return `${text} ${display.length} (${exact})`;
    },
  };
}
