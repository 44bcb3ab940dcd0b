const DAY_MINUTES = 24 * 60;
const FORM = /^(\d{4})-(\d\d)-(\d\d)[Tt](\d\d):(\d\d):(\d\d(?:\.\d+)?)(?:[Zz]|([+-])(\d\d):(\d\d))$/;

/** A point in time: whole minutes since a day of the year 0 in UTC, and seconds from there, below 61. */
interface Instant {
  minutes: number;
  seconds: number;
}

/**
 * Which of two times, RFC 3339 with any offset, is the later one: more than zero if it is the first, less if it is the
 * second, 0 if they are the same instant. A second 60 comes behind the second 59 and before the next minute.
 */
export function compareInstants(a: string, b: string): number {
  const [one, other] = [instantOf(a), instantOf(b)];
  return one.minutes - other.minutes || one.seconds - other.seconds;
}

function instantOf(text: string): Instant {
  const parts = FORM.exec(text);
  if (parts === null) throw new Error(`"${text}" is no time`);
  const [year, month, day, hour, minute, seconds] = parts.slice(1, 7).map(Number);
  const offset = parts[7] === undefined ? 0 : Number(parts[8]) * 60 + Number(parts[9]);
  const local = daysBefore(year, month, day) * DAY_MINUTES + hour * 60 + minute;
  return { minutes: parts[7] === '-' ? local + offset : local - offset, seconds };
}

/** Days from the last of February of the year 0 to a day of the Gregorian calendar: a leap day is then the last of its year. */
function daysBefore(year: number, month: number, day: number): number {
  const y = month < 3 ? year - 1 : year;
  const m = month < 3 ? month + 9 : month - 3;
  // Months from March on have 31, 30, 31, 30, 31 days, again and again: 153 in five of them.
  return y * 365 + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + Math.floor((153 * m + 2) / 5) + day;
}
