/** State of one unit of work, whichever engine runs it. */
export class Unit {
  #refusal: Error | undefined;
  #failure: { readonly error: unknown } | undefined;
  /** the commit has been sent: from here on the outcome may be unknown */
  committing = false;

  /** No statement is sent any more: a loop that nobody waits for must not write outside the transaction. */
  end(says = 'The transaction is over: something went on using it.'): void {
    this.#refusal ??= new Error(says);
  }

  get refusal(): Error | undefined {
    return this.#refusal;
  }

  /** A failed statement poisons the transaction. A commit would then answer well and keep nothing. */
  fail(error: unknown): void {
    this.#failure ??= { error };
  }

  throwIfFailed(): void {
    if (this.#failure) throw this.#failure.error;
  }
}
