import type { ClientFactOf, WorkshopSettings } from '../../dossier/index.ts';
import type { Role } from '../../dossier/workshopFacts.ts';
import type { DemoPerson } from './moment.ts';

/** Everybody here is invented, and so is the workshop. */
export const demoSettings: Partial<WorkshopSettings> = {
  name: 'Larkfield Rug Workshop',
  lines: ['Mill Lane 4', 'Larkfield'],
  currency: 'EUR',
  dryStandard: 'full',
  washersAuthority: { amountMinor: 400_000, currency: 'EUR' },
};

/** What the owner has tightened of her own accord. */
export const demoRuleChange = {
  address: 'rules/R18/brown/dryingTemperatureC',
  value: 25,
  why: 'A corroded brown border turned brittle in warm air here two winters ago.',
};

export const demoPeople: {
  readonly [P in DemoPerson]: {
    readonly name: string;
    readonly roles: readonly Role[];
    readonly pin: string;
  };
} = {
  mirela: { name: 'Mirela Ostrand', roles: ['owner', 'washer'], pin: '4107' },
  tobin: { name: 'Tobin Hale', roles: ['washer'], pin: '1853' },
  ines: { name: 'Ines Varga', roles: ['counter'], pin: '6290' },
};

/** Printed by the demo, since nothing in it is worth guarding. */
export const demoPassphrase = 'undyed wool on an oak loom';

type Person = Omit<ClientFactOf<'ClientAdded'>, 'type' | 'happenedAt'>;

export const demoClients = {
  almqvist: {
    name: 'Berit Almqvist',
    phone: '+00 555 0141',
    email: 'berit@example.org',
    address: 'Quay Street 9\nLarkfield',
  },
  dorran: { name: 'Callum Dorran', phone: '+00 555 0122', address: 'The Old Forge\nNether Larkfield' },
  farrokh: { name: 'پروین فرخ‌زاد', phone: '+00 555 0187', note: 'Prefers to be called in the evening.' },
  halloway: {
    name: 'Sister Agnes, Halloway House',
    phone: '+00 555 0103',
    address: 'Halloway House\nLarkfield',
  },
  iyer: { name: 'Tara Iyer', email: 'tara@example.org' },
  museum: { name: 'Larkfield Weavers’ Museum', phone: '+00 555 0190', address: 'Market Square 1\nLarkfield' },
  okello: { name: 'Joseph Okello', phone: '+00 555 0166' },
  pell: { name: 'Pell & Daughters, dealers', phone: '+00 555 0110', address: 'High Street 31\nLarkfield' },
} as const satisfies Readonly<Record<string, Person>>;

export type DemoClient = keyof typeof demoClients;
