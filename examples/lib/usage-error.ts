/** Something the user can mend; shown without a stack. */
export class UsageError extends Error {
  override readonly name: string = 'UsageError';
}
