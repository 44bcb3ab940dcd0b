/**
 * What the core uses of the platform besides the language: Node, browsers and workers all have it.
 *
 * Declared here, and nothing else, so that the core compiles without the types of any platform and
 * cannot reach for a clock, the network or a file by mistake.
 */

declare class TextEncoder {
  encode(text?: string): Uint8Array;
  encodeInto(text: string, target: Uint8Array): { read: number; written: number };
}

declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean; ignoreBOM?: boolean });
  decode(bytes?: ArrayBufferView | ArrayBufferLike, options?: { stream?: boolean }): string;
}

interface AbortSignal {
  readonly aborted: boolean;
  readonly reason: unknown;
  throwIfAborted(): void;
}

/** A deep copy of plain data. */
declare function structuredClone<T>(value: T): T;
