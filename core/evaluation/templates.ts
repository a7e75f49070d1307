import cautions from '../../templates/cautions.json';
import drivers from '../../templates/drivers.json';
import hullTypes from '../../templates/hull-types.json';
import indices from '../../templates/indices.json';
import materials from '../../templates/materials.json';
import optionAmounts from '../../templates/option-amounts.json';
import options from '../../templates/options.json';
import places from '../../templates/places.json';
import rates from '../../templates/rates.json';
import seasons from '../../templates/seasons.json';
import tripPoints from '../../templates/trip-points.json';
import acceptance from '../../templates/work/acceptance.json';
import afterSinking from '../../templates/work/after-sinking.json';
import cleanUp from '../../templates/work/clean-up.json';
import management from '../../templates/work/management.json';
import openings from '../../templates/work/openings.json';
import permits from '../../templates/work/permits.json';
import procurement from '../../templates/work/procurement.json';
import sinking from '../../templates/work/sinking.json';
import titleAndAssessment from '../../templates/work/title-and-assessment.json';
import topside from '../../templates/work/topside.json';
import tow from '../../templates/work/tow.json';
import yard from '../../templates/work/yard.json';
import { BugError } from '../base';
import { readLibrary, type Library, type TemplateFiles } from '../work';

/** The template files as they are shipped. */
export const TEMPLATE_FILES: TemplateFiles = {
  hullTypes,
  materials,
  cautions,
  tripPoints,
  rates,
  indices,
  drivers,
  places,
  options,
  optionAmounts,
  seasons,
  work: [
    titleAndAssessment,
    permits,
    procurement,
    yard,
    cleanUp,
    topside,
    openings,
    acceptance,
    tow,
    sinking,
    afterSinking,
    management,
  ],
};

let shipped: Library | undefined;

/** The library that is shipped with the program. @throws BugError when a template row does not fit: the tests see to it. */
export function shippedLibrary(): Library {
  if (shipped === undefined) {
    const { library, findings } = readLibrary(TEMPLATE_FILES);
    if (library === undefined)
      throw new BugError(findings.map(finding => `${finding.place}: ${finding.message}`).join('\n'));
    shipped = library;
  }
  return shipped;
}
