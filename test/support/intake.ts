import type { ConsignmentRequest } from '../../src/contract/index.ts';

let count = 0;
/** Ids as a screen would make them: never twice the same. */
export const newId = (): string => {
  count += 1;
  return `id-${count}`;
};

type Fact = ConsignmentRequest['rugs'][number]['drafts'][number]['fact'];

export const draft = (fact: Fact) => ({ id: newId(), fact });

export const halide = {
  ...{ type: 'ClientAdded' as const, name: 'Halide Örn', phone: '0555 0142', email: 'halide@example.org' },
};

/** A runner brought by a new client, as the page Receive sends it; `other` replaces parts. */
export function consignmentOf(
  tag: string,
  other: Partial<ConsignmentRequest> = {},
  received: Partial<Extract<Fact, { type: 'RugReceived' }>> = {},
): ConsignmentRequest {
  const consignment = other.consignment ?? newId();
  const client = other.client ?? { client: newId(), added: halide };
  return {
    consignment,
    client,
    rugs: [
      {
        rug: newId(),
        drafts: [
          draft({ type: 'DossierOpened', number: 1, title: 'Runner with three medallions' }),
          draft({
            ...{ type: 'RugReceived', visit: newId(), consignment, client: client.client, tag },
            ...{ scope: ['wash'], route: 'rug in use', reason: 'General wash.', authority: 'owner' },
            ...received,
          }),
        ],
      },
    ],
    ...other,
  };
}

export const measured: Fact = {
  type: 'RugMeasured',
  occasion: 'intake',
  shape: 'runner',
  lengthsMm: [2900, 2905, 2910],
  widthsMm: [800, 802, 801],
  uncertaintyMm: 5,
};
