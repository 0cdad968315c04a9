export { CompareSection } from './CompareSection.tsx';
export { DeclineSection } from './DeclineSection.tsx';
export { FinishSection } from './FinishSection.tsx';
export { InspectSection } from './InspectSection.tsx';
export { MoneySection } from './MoneySection.tsx';
export { ReturnSection } from './ReturnSection.tsx';
