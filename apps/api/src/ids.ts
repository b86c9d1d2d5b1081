/** Ids and secrets come from here, so that tests can count and the real ones cannot be guessed. */
export interface Ids {
  /** a UUIDv7 (RFC 9562): sorts by time, is no secret */
  newId(): string;
  /** 256 random bits, base64url: a session's token */
  newToken(): string;
}

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');

/** @param randomBytes as node:crypto's; @param nowMs milliseconds since 1970 */
export function createIds(randomBytes: (count: number) => Uint8Array, nowMs: () => number): Ids {
  return {
    newId() {
      const random = randomBytes(10);
      // Version 7 and variant 10 in the places RFC 9562 gives them.
      random[0] = ((random[0] ?? 0) & 0x0f) | 0x70;
      random[2] = ((random[2] ?? 0) & 0x3f) | 0x80;
      const digits = nowMs().toString(16).padStart(12, '0') + hex(random);
      return [
        digits.slice(0, 8),
        digits.slice(8, 12),
        digits.slice(12, 16),
        digits.slice(16, 20),
        digits.slice(20),
      ].join('-');
    },
    newToken: () => Buffer.from(randomBytes(32)).toString('base64url'),
  };
}
