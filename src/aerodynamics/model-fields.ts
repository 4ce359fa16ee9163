import { isRecord } from '../errors.js';
import {
  type ChoiceField,
  type CustomField,
  choice,
  type Declared,
  type Field,
  type Fields,
  type ListField,
  optional,
  type QuantityField,
  quantity,
  type RecordField,
  record,
  text,
  type VariantField,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { sourceFields } from '../inputs/source.js';
import type { ValidRange } from '../source.js';
import { RATIO } from '../units/unit.js';
import { fittedConstantFields } from './fitted-modern.js';
import type { AerodynamicModel } from './model.js';
import type { CoefficientGrid, ModelData } from './model-data.js';
import { coefficientLaws } from './registry.js';
import { scaleFields } from './scaled.js';

/** Most nodes along a side of a grid. */
const MOST_NODES = 10_000;

function listOf(of: Field, least: number): ListField {
  return { kind: 'list', of, least, most: MOST_NODES, label: of.label };
}

/** The id of a model of one's own. */
const ownId: CustomField = {
  kind: 'custom',
  read: (value, path) => {
    if (typeof value !== 'string' || value.trim() === '')
      throw refuseType(path, 'a text that is not empty', value);
    if (Object.hasOwn(coefficientLaws, value)) {
      throw refusal(path, `${path} must differ from the ids of the built-in models`, { value });
    }
    return value;
  },
  label: 'id',
};

/** Declaration of the spin decay constant. @internal */
export const spinDecayField: QuantityField<''> = /* @__PURE__ */ frozen(() =>
  quantity(RATIO, 0, 1e-3, 2e-5, 'spin decay constant'),
);

const spinEnteringField: ChoiceField = /* @__PURE__ */ frozen(() =>
  choice<AerodynamicModel['spinEntering']>(['across', 'total'], 'spin that enters'),
);

/** Declaration of {@link CoefficientGrid}. @internal */
export const gridFields: Declared<CoefficientGrid> = /* @__PURE__ */ frozen(() => {
  const rows = (min: number, max: number, example: number, label: string): ListField =>
    listOf(listOf(quantity(RATIO, min, max, example, label), 2), 1);
  return {
    id: ownId,
    label: optional(text('A ball of my own', 'label')),
    reynolds: listOf(quantity(RATIO, 1, 1e7, 1e5, 'Reynolds number'), 1),
    spinRatio: listOf(quantity(RATIO, 0, 10, 0.1, 'spin ratio'), 2),
    drag: rows(0.01, 10, 0.25, 'drag coefficient'),
    lift: rows(-5, 5, 0.15, 'lift coefficient'),
    source: record(sourceFields, 'source'),
    spinEntering: optional(spinEnteringField),
    spinDecay: optional(spinDecayField),
  };
});

type Case<Kind extends ModelData['kind']> = Omit<Extract<ModelData, { readonly kind: Kind }>, 'kind'>;

/**
 * Declares {@link ModelData}.
 * @param of - declares the model that another is made from
 * @internal
 */
export function modelDataField(of: CustomField): VariantField {
  const scaled: Declared<Case<'scaled'>> = { of, ...scaleFields };
  const reversed: Declared<Case<'reverse-magnus'>> = { of };
  const fitted: Declared<Case<'fitted'>> = {
    id: ownId,
    label: gridFields.label,
    constants: record(fittedConstantFields, 'constants'),
    source: gridFields.source,
  };
  const cases: Readonly<Record<ModelData['kind'], unknown>> = {
    table: gridFields,
    scaled,
    'reverse-magnus': reversed,
    fitted,
  };
  return { kind: 'variant', by: 'kind', cases: cases as Readonly<Record<string, Fields>>, label: 'model' };
}

const coefficient: CustomField = {
  kind: 'custom',
  read: (value, path) => {
    if (typeof value !== 'function') throw refuseType(path, 'a function of Re and S', value);
    return value;
  },
  label: 'coefficient',
};

function rangeField(label: string): RecordField {
  const end = quantity(RATIO, 0, 1e12, 1, label);
  return record<ValidRange>({ min: end, max: end }, label, ({ min, max }, path) => {
    if (min > max) throw refusal(`${path}.min`, `${path}.min must not exceed ${path}.max`, { value: min });
  });
}

/** Declaration of {@link AerodynamicModel}, a record of functions. @internal */
export const modelFields: Declared<AerodynamicModel> = /* @__PURE__ */ frozen(() => ({
  id: {
    kind: 'custom',
    read: (value, path) => {
      if (typeof value !== 'string' || value === '')
        throw refuseType(path, 'a text that is not empty', value);
      return value;
    },
    label: 'id',
  },
  label: text('A ball of my own', 'label'),
  source: record(sourceFields, 'source'),
  validity: record<AerodynamicModel['validity']>(
    { reynolds: rangeField('Reynolds number'), spinRatio: rangeField('spin ratio') },
    'validity',
  ),
  extrapolation: text('The formulas continue.', 'extrapolation'),
  spinEntering: spinEnteringField,
  dragCoefficient: coefficient,
  liftCoefficient: coefficient,
  spinDecay: spinDecayField,
}));

/** True for a record that is data and not functions: it says of which kind. @internal */
export function isModelData(choice: unknown): choice is ModelData {
  return isRecord(choice) && Object.hasOwn(choice, 'kind');
}
