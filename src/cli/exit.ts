/** Exit codes; part of the interface, see section 4.4 of the specification. */
export const EXIT = { clean: 0, findings: 1, usage: 2, unreadable: 3, fault: 4 } as const;

/** Exit codes of signals that end the command: 128 and the number of the signal, as shells have it. */
export const SIGNAL_EXIT = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;

/** The command was used in a wrong way; the message says how. */
export class WrongUse extends Error {
  readonly exitCode = EXIT.usage;
}
