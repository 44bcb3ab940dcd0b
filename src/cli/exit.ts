/** Exit codes; part of the interface, see section 4.4 of the specification. */
export const EXIT = { clean: 0, findings: 1, usage: 2, unreadable: 3, fault: 4, interrupted: 130 } as const;

/** The command was used in a wrong way; the message says how. */
export class WrongUse extends Error {
  readonly exitCode = EXIT.usage;
}
