/** The form of a time in AHX: `dateTime` of the shared schema. */
const FORM =
  /^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])[Tt]([01][0-9]|2[0-3]):[0-5][0-9]:([0-5][0-9]|60)(\.[0-9]{1,9})?([Zz]|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$/;

/** Whether a text is a time after RFC 3339, on a day that the calendar has. */
export function isDateTime(text: string): boolean {
  return FORM.test(text) && isDate(text.slice(0, 'YYYY-MM-DD'.length));
}

/** Whether a text is a day of the calendar, `YYYY-MM-DD`. */
export function isDate(text: string): boolean {
  if (!/^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$/.test(text)) return false;
  const [year, month, day] = text.split('-').map(Number);
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const longest = month === 2 ? (isLeap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return day <= longest;
}
