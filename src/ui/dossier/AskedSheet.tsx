import { ConsentSheet } from './agree/ConsentSheet.tsx';
import { ConsentRefusedSheet, ConsentWithdrawnSheet } from './agree/refusalSheets.tsx';
import type { Ask } from './ask.ts';
import { ClaimSheet } from './identify/ClaimSheet.tsx';
import { ColourSheet } from './identify/ColourSheet.tsx';
import { FindingSheet } from './identify/FindingSheet.tsx';
import { FoundationSheet } from './identify/FoundationPart.tsx';
import { KnotsPhotoSheet } from './identify/KnotsPhotoSheet.tsx';
import { KnotsSheet } from './identify/KnotsSheet.tsx';
import { LookOverSheet } from './identify/LookOverSheet.tsx';
import { DryingHoursSheet } from './plan/DryingHoursSheet.tsx';
import { PlannedBathSheet } from './plan/PlannedBathSheet.tsx';
import { CorrectiveAimSheet, OverrideSheet, PlanOnRecordSheet, SignOffSheet } from './plan/planSheets.tsx';
import {
  CameBackSheet,
  IncidentSheet,
  IncidentToldSheet,
  MoveSheet,
  NoteSheet,
  QuarantineSheet,
  ReleaseSheet,
  SendOutSheet,
  StorageSheet,
  UnclaimedSheet,
} from './story/custodySheets.tsx';
import { DustSheet } from './story/DustSheet.tsx';
import { MeasureSheet } from './story/MeasureSheet.tsx';
import { ReceiptSheet } from './story/ReceiptSheet.tsx';
import { SurveySheet } from './story/SurveySheet.tsx';
import { WeighSheet } from './story/WeighSheet.tsx';
import { WithdrawSheet } from './story/WithdrawSheet.tsx';
import { BlotSheet } from './test/BlotSheet.tsx';
import { TestRefusedSheet } from './test/TestRefusedSheet.tsx';

/** The sheet for what was asked. */
export function AskedSheet({ asked, onClose }: { readonly asked: Ask; readonly onClose: () => void }) {
  switch (asked.kind) {
    case 'measure':
      return <MeasureSheet onClose={onClose} />;
    case 'weigh':
      return <WeighSheet onClose={onClose} />;
    case 'survey':
      return <SurveySheet onClose={onClose} />;
    case 'dust':
      return <DustSheet onClose={onClose} />;
    case 'claim':
      return <ClaimSheet about={asked.about} onClose={onClose} />;
    case 'look over':
      return <LookOverSheet onClose={onClose} />;
    case 'finding':
      return <FindingSheet finding={asked.finding} onClose={onClose} />;
    case 'foundation':
      return <FoundationSheet onClose={onClose} />;
    case 'colour':
      return <ColourSheet colour={asked.colour} on={asked.on} onClose={onClose} />;
    case 'knots':
      return <KnotsSheet onClose={onClose} />;
    case 'knots on photographs':
      return <KnotsPhotoSheet onClose={onClose} />;
    case 'blot':
      return <BlotSheet place={asked.place} onClose={onClose} />;
    case 'test refused':
      return <TestRefusedSheet colour={asked.colour} onClose={onClose} />;
    case 'drying hours':
      return <DryingHoursSheet onClose={onClose} />;
    case 'planned bath':
      return <PlannedBathSheet onClose={onClose} />;
    case 'corrective aim':
      return <CorrectiveAimSheet onClose={onClose} />;
    case 'plan on record':
      return <PlanOnRecordSheet onClose={onClose} />;
    case 'override':
      return <OverrideSheet rule={asked.rule} onClose={onClose} />;
    case 'sign-off':
      return <SignOffSheet who={asked.who} onClose={onClose} />;
    case 'consent':
      return <ConsentSheet onClose={onClose} />;
    case 'consent refused':
      return <ConsentRefusedSheet onClose={onClose} />;
    case 'consent withdrawn':
      return <ConsentWithdrawnSheet onClose={onClose} />;
    case 'note':
      return <NoteSheet onClose={onClose} />;
    case 'move':
      return <MoveSheet onClose={onClose} />;
    case 'quarantine':
      return <QuarantineSheet onClose={onClose} />;
    case 'release':
      return <ReleaseSheet onClose={onClose} />;
    case 'incident':
      return <IncidentSheet onClose={onClose} />;
    case 'sign receipt':
      return <ReceiptSheet onClose={onClose} />;
    case 'incident told':
      return <IncidentToldSheet incident={asked.incident} onClose={onClose} />;
    case 'send out':
      return <SendOutSheet onClose={onClose} />;
    case 'came back':
      return <CameBackSheet onClose={onClose} />;
    case 'storage':
      return <StorageSheet onClose={onClose} />;
    case 'unclaimed':
      return <UnclaimedSheet onClose={onClose} />;
    case 'withdraw':
      return <WithdrawSheet entry={asked.entry} onClose={onClose} />;
  }
}
