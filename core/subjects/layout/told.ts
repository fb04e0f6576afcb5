/** How the car is laid out: where its engine stands and what kind of suspension each end has. Ask for them first: most guesses follow from them. */
import { choice, maybe } from '../../catalog.js';

export const enginePlace = choice({
  path: 'engine.place',
  scope: 'car',
  name: 'place of the engine',
  words: ['engine place', 'engine position', 'engine location'],
  options: ['front', 'mid', 'rear'],
  optionWords: {
    front: ['front engine', 'front engined'],
    mid: ['mid engine', 'mid engined', 'midengined', 'middle'],
    rear: ['rear engine', 'rear engined'],
  },
  measure: 'Ahead of the driver, between the axles behind the driver, or behind the rear axle.',
});
export const suspension = choice({
  path: 'suspension',
  scope: 'axle',
  name: 'kind of suspension',
  words: ['suspension', 'suspension kind', 'suspension type', 'suspension layout'],
  options: ['strut', 'wishbone', 'multilink', 'trailing arm', 'twist beam', 'live axle'],
  optionWords: {
    strut: ['struts', 'strut suspension'],
    wishbone: ['double wishbone', 'wishbones', 'a arm', 'double a arm', 'control arm'],
    multilink: ['multi link', 'five link'],
    'trailing arm': ['semi trailing arm', 'trailing arms'],
    'twist beam': ['torsion beam', 'twist axle'],
  },
  measure: 'What holds the hub: a strut, two wishbones, several links, an arm that trails, a beam that twists, or a rigid axle.',
});
export const axleKind = choice({
  path: 'axle.kind',
  scope: 'axle',
  name: 'kind of axle',
  words: ['axle', 'axle kind', 'axle type'],
  options: ['independent', 'beam'],
  optionWords: {
    independent: ['irs', 'ifs', 'independent suspension', 'independent axle'],
    beam: ['live', 'live axle', 'solid', 'solid axle', 'beam axle', 'rigid axle', 'stick axle', 'de dion'],
  },
  measure: 'A beam joins both hubs: what lifts one wheel tilts the other. A twist beam lies between: taken as independent.',
  estimate: {
    needs: { suspension: maybe(suspension) },
    compute: ({ suspension }) => (suspension === 'live axle' ? 'beam' : 'independent'),
    source: 'by the kind of suspension; independent unless told',
  },
});
