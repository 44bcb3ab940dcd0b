/** Reason of a rule that did not run because it was not wanted. */
export const OFF = 'it is off unless asked for';
