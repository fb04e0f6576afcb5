/**
 * Lines as club members typed them, handed to us with the project: one message a line, then the broken and hostile ones with what a good reply does.
 * `{{repeat:TEXT:N}}`, `{{u+XXXX}}` and `{{empty}}` are expanded before the line is sent. The reading of each is ours: see ../reads.ts for its notation.
 */
import type { Line } from './line.js';

export const phoneLines: readonly Line[] = [
  ['whats the wheel rate w 375 lb/in n motion ratio .71', 'show | wheelRate? | with: spring.rate?=375 lb/in, spring.ratio?=0.71'],
  ['8kg/mm springs in lb/in?', 'calc | unit: lb/in | names: 8kg/mm'],
  [
    'hz if i go from 350s to 450s in the rear',
    'compare | rear.rideFrequency, rear.spring.rate=350 lb/in vs rear.rideFrequency, rear.spring.rate=450 lb/in',
  ],
  ['22mm to 25 mm bar how much stiffer', 'bar | bar.diameter?=22 mm vs bar.diameter?=25 mm'],
  ['move the endlink from the 9½ in hole to the 8 in hole', 'bar | bar.lever?=9.5 in vs bar.lever?=8 in'],
  [
    '225 45 16 vs 205 50 15 what does my speedo say at 60',
    'compare | speedometer, tire.size?=225/45R16 vs speedometer, tire.size?=205/50R15 | with: roadSpeed=60 mph',
  ],
  ['will 17x8 et35 stick out more than 15x7 +38', 'compare | wheel.edge?, wheel.size?=17x8 ET35 vs wheel.edge?, wheel.size?=15x7 ET38'],
  [
    'top speed in 2nd 1.89, 4.10s, 205/50r15, 7200 rpm',
    'none | 2.topSpeed | with: 2.gear.ratio=1.89, final=4.1, tire.size?=205/50R15, engineSpeed=7200 rpm',
  ],
  ['can 118 whp spin 225s in 2nd at 40', 'none | 2.traction.spin | with: engine.wheelPower=87993, roadSpeed=40 mph'],
  [
    'progressive 280-430 over 4" whats the rate at 900 lb',
    'none | springRateHere? | with: spring.rates?=line[0:49036 0.1016:75305], springLoad=900 lbf',
  ],
  [
    'coil 12.5mm wire 100mm mean dia 6 turns how stiff',
    'none | coil.rate? | with: coil.wire?=12.5 mm, coil.diameter?=100 mm, coil.turns?=6',
  ],
  [
    'springs 250–300 lb/in front what hz range w 560 sprung',
    'none | front.rideFrequency | with: front.spring.rate=250..300 lb/in, lf+rf.sprung=560 lb',
  ],
  ['save my car turnip 2640lb 52.5% front wb 99', 'save | mass=2640 lb, frontShare=52.5 %, wheelbase=99 in | names: turnip'],
  ['turnips cg is 19”', 'set | on turnip: cg.height=19 in'],
  ['forget turnips rear bar', 'forget | on turnip: rear.bar.diameter'],
  ['rename turnip to ‘old blue’', 'rename | on turnip:  | names: turnip, old blue'],
  ['try 425 rears on turnip', 'try | on turnip: rear.spring.rate=425 lb/in'],
  ['undo', 'undo'],
  ['put it back how it was sunday', 'back | on sunday:  | names: sunday'],
  ['moth v pickle, front share', 'compare | on moth: frontShareNow vs on pickle: frontShareNow'],
  ['what would mine need to have moths front share', 'find | on moth:  | goal: frontShareNow'],
  ['turnip +180 lb passenger 14" right of center', 'none | on turnip: passenger.weight+=180 lb, passenger.right=14 in'],
  ['scales 742 699 571 598 cross?', 'none | cross | with: lf.scale=742 lb, rf.scale=699 lb, lr.scale=571 lb, rr.scale=598 lb'],
  ['337 kg 317 259 271 same thing in lbs', 'calc | unit: lbs | names: 337 kg, 317, 259, 271'],
  ['half a turn up on the rf what happens', 'try | rf.perch.turns+=0.5'],
  ['toe 1/8 out total on 24in plates in deg', 'beyond: toe'],
  ['camber −2.5° both fronts turnip', 'none | on turnip: lf+rf.camber=-2.5 deg'],
  ['caster: 14 deg sweep, +0.4 n -2.3', 'beyond: caster'],
  ['bumpsteer -2:.16 -1:.09 0:0 1:-.07 2:-.14', 'beyond: bump steer'],
  ['cg ht 2480 lb front 1302 then 1348 rear up 24in wb 98.5 tire radius 11.9', 'beyond: CG height'],
  ['how do i set the endlinks neutral', 'bar | preload.shorten?'],
  ['100 lbf at 3 in/s enough shock for 400 springs?', 'beyond: damper'],
  ['how far does turnip lean at .9g', 'show | on turnip: roll.angle | with: lateral=0.9 g'],
  ['which end lets go first', 'corner'],
  [
    'came in hot 37.2 37 34.1 34.4 whats that cold',
    'none | tire.coldFromHot? | with: lf.tire.hotPressure=37.2 psi, rf.tire.hotPressure=37 psi, lr.tire.hotPressure=34.1 psi, rr.tire.hotPressure=34.4 psi',
  ],
];

/** Line, what a good reply does, reading. */
export const hostileLines: readonly (readonly [string, string, string])[] = [
  ['{{empty}}', 'stays silent, or in a direct chat one line with an example; saves nothing', 'refused: '],
  [
    'wheel rate from a 450 psi spring at .65',
    'says psi is a pressure and a spring rate was wanted, shows a line with lb/in',
    'refused: pressure, rate, lb/in',
  ],
  [
    'track 58 lb, what’s my roll stiffness',
    'says track must be a length, asks for it; keeps the rest of the line',
    'refused: track, length, 58 in',
  ],
  ['springs 450 lb/in + 8 kg', 'says a weight cannot be added to a rate; shows kg/mm', 'refused: weight, rate, kg/mm'],
  ['save brisk -2400 lb 52% front', 'refuses a negative weight; nothing saved', 'refused: above 0'],
  ['scales lf 700 rf 690 lr 0 rr -20', 'says a scale cannot read below zero, points at rr', 'refused: below zero, rr'],
  ['braking .9 g cg 19 wheelbase 0', 'says wheelbase must be above 0; no infinity or NaN in the reply', 'refused: wheelbase, above 0'],
  ['how tall is a 9999/1R17', 'says width and aspect are out of range for a tire; computes nothing', 'refused: 9999'],
  [
    'how far do i turn a 4.5mm eccentric for 9 deg camber, 248mm',
    'says it cannot reach 9, gives the most it can (about 1.04)',
    'beyond: alignment',
  ],
  [
    'springs alone are 60% front, what rear bar gets 80% front',
    'says it would take a bar below zero; suggests the front instead',
    'bar | names: springs alone are 60% front, what rear bar gets 80% front',
  ],
  ['weight 2500.{{repeat:0:5000}}1 lb', 'reads 2500 lb or says too many digits; no hang', 'refused: long'],
  [
    'save <img src=x onerror=alert(1)> 2400 lb',
    'refuses the name or stores it as text, shown escaped everywhere it is listed later',
    'refused: name',
  ],
  [
    'save [tobb](https://matrix.to/#/@tobb:example.org) 2400 lb',
    'no link, no mention pill in the reply; name refused or shown as text',
    'refused: name',
  ],
  ['let a = b, b = a. wheel rate a', 'says a and b are defined by each other; stops at once', 'refused: "b"'],
  [
    '{{repeat:(:3000}}1{{repeat:):3000}} lb/in',
    'says too deeply nested or too long; no stack overflow, next line still answered',
    'refused: long',
  ],
  ["constructor.constructor('return process')()", 'not understood, like any unknown words; nothing evaluated', 'refused: return process'],
  [
    'save {{u+202e}}elttek{{u+200b}} 2400 lb',
    'strips or refuses direction and zero-width marks, so no name can pose as another',
    'save | mass=2400 lb | names: elttek',
  ],
  [
    'flumph the wibble by 3 sprongs',
    'says which words it does not know, offers the nearest real line; no guess presented as an answer',
    'refused: flumph',
  ],
];
