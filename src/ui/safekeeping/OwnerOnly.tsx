/** Stands where a button would be for somebody who may not press it. */
export const OwnerOnly = () => <p className="hint">Only an owner does this.</p>;
