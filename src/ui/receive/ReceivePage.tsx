import { Empty } from '../kit/index.ts';

/** Takes in a consignment: client, rugs, photographs, marks, signature. */
export function ReceivePage() {
  return (
    <div className="page">
      <h1>Receive rugs</h1>
      <Empty>Taking in rugs is not built yet.</Empty>
    </div>
  );
}
