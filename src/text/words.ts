/** What a person reads when something was refused: what happened, why it matters, what to do now. */
export interface Words {
  readonly happened: string;
  readonly matters: string;
  readonly now: string;
}

/** One function per problem code; the key is the permanent code. */
export type WordsFor<P extends { readonly code: string; readonly facts: unknown }> = {
  readonly [Code in P['code']]: (facts: Extract<P, { readonly code: Code }>['facts']) => Words;
};
