/**
 * What each line of a calculation's example rests on, edition 2023: sections and tables of the code by their numbers there, other
 * sources by their name, then after `<` the lines it is worked from. Written down from the code's structure: which article speaks of what.
 */
export const CITED_LINES = `
ac-voltage-drop
  ~.resistance: Chapter 9 Table 9
  ~.reactance: Chapter 9 Table 9
  ~: IEEE Std 141 < ~.resistance, ~.reactance
air-conditioner-circuit
  ~.ampacity: 440.4(B)
  ~.overcurrent.least: 440.32, 440.33; 240.6(A) < ~.ampacity
  ~.overcurrent.most: 440.4(B)
ampacity
  ~.corrected: Table 310.16; Table 310.15(B)(1)(1)
  ~.terminal: 110.14(C)(1); Table 310.16
  ~.allowed: 110.14(C)(1) < ~.corrected, ~.terminal
angle-pull
  ~: 314.28(A)(2)
appliances-together
  use.30.leg-1: 210.20(A)
back-entry-depth
  ~: 314.28(A)(2); Table 312.6(A)
box-volume
  ~: 314.16(B); Table 314.16(B)
burial-cover
  ~: 300.5(A); Table 300.5(A)
cable-bend-radius
  ~: 334.24
conductor-adequacy
  ~.corrected: Table 310.16; Table 310.15(B)(1)(1)
  ~.terminal: 110.14(C)(1); Table 310.16
  ~.allowed: 110.14(C)(1) < ~.corrected, ~.terminal
conductor-area
  ~: Chapter 9 Table 5
conductor-resistance
  ~: Chapter 9 Table 8
conductor-size
  ~.corrected: Table 310.16; Table 310.15(B)(1)(1)
  ~.terminal: 110.14(C)(1); Table 310.16
  ~.allowed: 110.14(C)(1) < ~.corrected, ~.terminal
conductor-weight
  ~: Densities of metals and insulation; Chapter 9 Table 5; Chapter 9 Table 8
cooking-branch-load
  ~.sum: 220.55
  ~.large.column-C: Table 220.55
  ~.total: 220.55 < ~.large.column-C
current-carrying-count
  ~: 310.15(E)
dryer-circuit
  ~.demand: 220.54
  ~.ampacity: 422.10(A) < ~.demand
  ~.overcurrent.least: 422.10(A); 240.6(A) < ~.ampacity
  ~.overcurrent.most: 210.21(B)(1)
dryer-demand
  ~.connected: 220.54
  ~.percent: Table 220.54
  ~.total: 220.54 < ~.connected, ~.percent
dwelling-service-conductor
  ~: 310.12
entry-distance
  ~: 314.28(A)(2)
equipment-grounding-conductor
  ~: 250.122(B); Table 250.122; Chapter 9 Table 8
ev-load
  ~: 220.57
ev-supply-circuit
  ~.ampacity: 625.42
  ~.overcurrent.least: 625.41; 240.6(A) < ~.ampacity
existing-dwelling-load
  ~.lighting: 220.83(B)
  ~.small-appliance: 220.83(B)
  ~.appliances: 220.83(B)
  ~.climate: 220.83(B)
  ~.sum: 220.83(B) < ~.lighting, ~.small-appliance, ~.appliances
  ~.tiers: 220.83(B) < ~.sum
  ~.total: 220.83(B) < ~.tiers, ~.climate
fault-current
  ~.source.ohms: Transformer nameplate
  ~.source.resistance: X/R of the source < ~.source.ohms
  ~.source.reactance: X/R of the source < ~.source.ohms
  ~.source.total: < ~.source.resistance, ~.source.reactance
  ~.source.amperes: Ohm's law < ~.source.total
  ~.1.resistance: Chapter 9 Table 8 note: R2 = R1 [1 + α (T2 − 75)]; Chapter 9 Table 9
  ~.1.reactance: Chapter 9 Table 9
  ~.1.path-resistance: < ~.1.resistance, ~.source.resistance
  ~.1.path-reactance: < ~.1.reactance, ~.source.reactance
  ~.1.total: < ~.1.path-resistance, ~.1.path-reactance
  ~.1.amperes: Ohm's law < ~.1.total
  ~.2.resistance: Chapter 9 Table 8 note: R2 = R1 [1 + α (T2 − 75)]; Chapter 9 Table 9
  ~.2.reactance: Chapter 9 Table 9
  ~.2.path-resistance: < ~.2.resistance, ~.1.path-resistance
  ~.2.path-reactance: < ~.2.reactance, ~.1.path-reactance
  ~.2.total: < ~.2.path-resistance, ~.2.path-reactance
  ~.2.amperes: Ohm's law < ~.2.total
fault-loop
  ~.2.resistance: Chapter 9 Table 8 note: R2 = R1 [1 + α (T2 − 75)]; Chapter 9 Table 9
  ~.2.reactance: Chapter 9 Table 9
  ~.2.path-resistance: < ~.2.resistance, ~.1.path-resistance
  ~.2.path-reactance: < ~.2.reactance, ~.1.path-reactance
  ~.2.total: < ~.2.path-resistance, ~.2.path-reactance
  ~.2.amperes: Ohm's law < ~.2.total
  ~.multiple: 250.4(A)(5) < ~.2.amperes
  ~.trip.5: Instantaneous trip
  ~.trip.10: Instantaneous trip
feeder-tap
  ~: 240.21(B)(1)
fixed-appliance-demand
  ~.appliances-75: 220.53
  ~.appliances: < ~.appliances-75
general-lighting-load
  ~.lighting: 220.41
  ~.small-appliance: 220.52(A)
  ~.laundry: 220.52(B)
  ~.general: < ~.lighting, ~.small-appliance, ~.laundry
generator-inlet-circuit
  ~.ampacity: 445.13
  ~.overcurrent.most: 110.3(B)
  ~.output: 702.4
ground-rods
  ~: 250.53(A)(2)
grounding-electrode-conductor
  ~: Table 250.66; Chapter 9 Table 8
hard-pull
  ~.elbow.1: Common practice
heat-circuit
  ~.ampacity: 424.4(B)
  ~.overcurrent.least: 424.4(B); 240.6(A) < ~.ampacity
  ~.overcurrent.most: 424.22(B)
interrupting-margin
  ~: 110.9 < ~.available
jam-ratio
  ~.straight: Chapter 9 Table 1, informational note on jamming; Chapter 9 Table 4; Chapter 9 Table 5
  ~.bent: Chapter 9 Table 1, informational note on jamming; Cable makers' practice; Chapter 9 Table 4; Chapter 9 Table 5
largest-motor
  ~: 430.24
leg-currents
  ~.L1.motor: 430.24
  ~.L1: < ~.L1.motor
  ~.L2.motor: 430.24
  ~.L2: < ~.L2.motor
  ~.neutral.motor: 430.24
  ~.neutral: 220.61(A) < ~.neutral.motor
lighting-demand
  ~.part-1: Table 220.45
  ~.part-2: Table 220.45
  ~.lighting-demand: < ~.part-1, ~.part-2
loop-impedance
  ~.resistance: Chapter 9 Table 9
  ~.reactance: Chapter 9 Table 9
loop-resistance
  readings.loop: Ohm's law
managed-load
  ~.connected:
  ~.setpoint: 625.42(A); 750.30
  ~.total: 625.42(A); 750.30 < ~.connected, ~.setpoint
  ~.sizing: 625.42(A); 750.30 < ~.total
measured-demand
  ~: 220.87
mixed-conductor-area
  ~: Chapter 9 Notes 5 and 9; Chapter 9 Table 5
motor-circuit
  ~.current: 430.6(A)(1); Table 430.248
  ~.ampacity: 430.22 < ~.current
  ~.overcurrent.least: 430.110(A); 240.6(A) < ~.current
  ~.overcurrent.most: 430.52(C)(1); 240.6(A) < ~.current
  ~.overload: 430.32(A)(1)
multiwire-circuit
  ~.neutral: Article 100, multiwire branch circuit
neutral-conductor
  ~: 215.2(A); Table 310.16 < ~.unbalance
neutral-load
  ~.line-to-neutral: 220.61(A)
  ~.cooking: 220.61(B)(1)
  ~.dryers: 220.61(B)(1)
  ~.sum: < ~.line-to-neutral, ~.cooking, ~.dryers
  ~.amperes: < ~.sum
  ~.total: 220.61(A) < ~.amperes
neutral-reduction
  ~: 220.61(B)(2)
next-better-box
  ~: Common practice
  ~.volume: Table 314.16(A); Common practice < ~
next-better-raceway
  ~: Common practice < ~.area
noncoincident-load
  ~: 220.60
optional-climate-load
  ~.cooling-1: 220.82(C)
  ~.space-heating-2: 220.82(C)
  ~.climate: 220.82(C) < ~.cooling-1, ~.space-heating-2
optional-dwelling-load
  ~.lighting: 220.41
  ~.small-appliance: 220.52(A)
  ~.laundry: 220.52(B)
  ~.general: < ~.lighting, ~.small-appliance, ~.laundry
  ~.appliances: 220.82(B)
  ~.sum: < ~.general, ~.appliances
  ~.tiers: 220.82(B) < ~.sum
  ~.cooling-1: 220.82(C)
  ~.climate: 220.82(C) < ~.cooling-1
  ~.total: 220.82 < ~.tiers, ~.climate
outbuilding-feeder-load
  ~.noncontinuous:
  ~.continuous:
  ~.motor:
  ~.largest-motor: 430.24
  ~.total: < ~.noncontinuous, ~.continuous, ~.motor, ~.largest-motor
  ~.amperes: < ~.total
  ~.sizing: 215.2(A); 215.3 < ~.noncontinuous, ~.continuous, ~.motor, ~.largest-motor
overcurrent-rating
  ~: 210.20(A); 240.6(A)
parallel-ampacity
  ~: 310.10(G) < ~.each
parallel-grounding-conductors
  ~: 250.122(F); Table 250.122
pull-box-size
  ~.width: 314.28(A)(2) < ~.width.left.1
  ~.height: 314.28(A)(2) < ~.height.bottom.1
  ~.in-out: 314.28(A)(2)
pulling-tension
  ~.1: Mechanics of a cable pull
  ~.2: Mechanics of a cable pull < ~.1
  ~.3: Mechanics of a cable pull; Mechanics of a cable pull < ~.2
  ~.2.sidewall: Mechanics of a cable pull < ~.2
pulling-tension-limit
  ~: ICEA guidance as cable makers print it; ICEA guidance as cable makers print it
raceway-bend-radius
  ~: Chapter 9 Table 2
raceway-expansion
  ~.change: 352.44(A)
  ~.change.table: Table 352.44(A)
  ~: 352.44(A) < ~.change
raceway-fill
  ~.area: Chapter 9 Table 5
  ~.limit: Chapter 9 Table 4; Chapter 9 Table 1
  ~: Chapter 9 Table 4 < ~.area
raceway-size
  ~.area: Chapter 9 Table 5
  ~: Chapter 9 Table 4; Chapter 9 Table 1
raceway-supports
  ~.spacing.within: 352.30
  ~.spacing.apart: Table 352.30(B)
  ~: 352.30; Table 352.30(B) < ~.spacing.apart, ~.spacing.within
raceway-temperature-span
  ~: Conduit makers' practice
range-circuit
  ~.demand.sum: 220.55
  ~.demand.large.column-C: Table 220.55
  ~.demand: 220.55 < ~.demand.large.column-C
  ~.ampacity: Table 220.55 < ~.demand
  ~.overcurrent.least: 210.19(C); Table 220.55; 240.6(A) < ~.ampacity
  ~.overcurrent.most: 422.11(B)
range-demand
  ~.large.column-C: Table 220.55
  ~.large.average: 220.55
  ~.large.over-12: 220.55 < ~.large.average
  ~.large.increased: 220.55 < ~.large.column-C, ~.large.over-12
  ~.total: 220.55 < ~.large.increased
receptacle-circuit
  ~.ampacity: 210.21(B)(1)
  ~.overcurrent.least: 210.21(B)(1)
  ~.overcurrent.most: 210.21(B)(1)
rv-park-demand
  ~.sites-1: 551.73(A)
  ~.connected: < ~.sites-1
  ~.demand: Table 551.73(A) < ~.connected
  ~.total: 551.73(A) < ~.demand
rv-site-feeder
  ~: 551.73(D)
sidewall-pressure-limit
  ~: ICEA guidance as cable makers print it
source-impedance
  ~.ohms: Transformer nameplate
  ~.resistance: X/R of the source < ~.ohms
  ~.reactance: X/R of the source < ~.ohms
spa-circuit
  ~.ampacity: 680.10
  ~.overcurrent.least: 110.3(B)
  ~.overcurrent.most: 110.3(B)
standard-dwelling-load
  ~.lighting: 220.41
  ~.small-appliance: 220.52(A)
  ~.laundry: 220.52(B)
  ~.general: < ~.lighting, ~.small-appliance, ~.laundry
  ~.part-1: Table 220.45
  ~.part-2: Table 220.45
  ~.lighting-demand: < ~.part-1, ~.part-2
  ~.appliances-whole: 220.50
  ~.appliances: < ~.appliances-whole
  ~.cooking.large.column-C: Table 220.55
  ~.cooking.total: 220.55 < ~.cooking.large.column-C
  ~.dryers.connected: 220.54
  ~.dryers.percent: Table 220.54
  ~.dryers.total: 220.54 < ~.dryers.connected, ~.dryers.percent
  ~.climate: 220.60
  ~.ev-1: 220.57
  ~.ev: < ~.ev-1
  ~.others: 220.14(A)
  ~.motor: 430.24
  ~.total: 220.40 < ~.lighting-demand, ~.appliances, ~.cooking.total, ~.dryers.total, ~.climate, ~.ev, ~.others
straight-pull
  ~: 314.28(A)(1)
subpanel-feeder
  ~.ampacity: 215.2(A), 215.3
  ~.overcurrent.least: 215.2(A), 215.3; 240.6(A) < ~.ampacity
  ~.overcurrent.most: 408.36
supply-bonding-jumper
  ~: Table 250.102(C)(1); Chapter 9 Table 8
three-wire-voltage-drop
  ~.balanced.resistance: Chapter 9 Table 9
  ~.balanced.reactance: Chapter 9 Table 9
  ~.balanced: IEEE Std 141 < ~.balanced.resistance, ~.balanced.reactance
  ~.leg.resistance: Chapter 9 Table 9
  ~.leg.reactance: Chapter 9 Table 9
  ~.leg: IEEE Std 141 < ~.leg.resistance, ~.leg.reactance
trench-depth
  ~.cover: 300.5(A); Table 300.5(A)
  ~: < ~.cover
voltage-drop
  ~.volts: Chapter 9 Table 8
  ~: 210.19(A) informational note < ~.volts
water-heater-circuit
  ~.current: 422.10(A)
  ~.ampacity: 422.13 < ~.current
  ~.overcurrent.least: 422.13; 240.6(A) < ~.ampacity
  ~.overcurrent.most: 422.11(E)(3); 240.6(A) < ~.current
wedging-factor
  ~: Mechanics of a cable pull
welder-circuit
  ~.ampacity: 630.11(A); Table 630.11(A)
  ~.overcurrent.least: 630.11(A); 240.6(A) < ~.ampacity
  ~.overcurrent.welder: 630.12(A); 240.6(A)
  ~.overcurrent.most: 630.12(A); 630.12(B); 240.6(A) < ~.ampacity
wire-bending-space
  ~: Table 312.6(B)(2)
`;
