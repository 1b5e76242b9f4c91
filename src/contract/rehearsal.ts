/**
 * Thrown by a command that was only to be tried: everything it did is taken back, and the caller is answered with
 * what would have come of it. The value has the shape of the operation's own output.
 */
export class Rehearsal extends Error {
  readonly value: unknown;

  constructor(value: unknown) {
    super('Tried and taken back.');
    this.name = 'Rehearsal';
    this.value = value;
  }
}
