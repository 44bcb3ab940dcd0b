/** Why records are left out that are judged by the time of the check, where none was given. */
export const NO_TIME = 'no time was given to compare with (asOf)';
