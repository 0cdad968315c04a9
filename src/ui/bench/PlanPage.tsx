export function PlanPage() {
  return <h1>PlanPage</h1>;
}
