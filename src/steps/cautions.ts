/** What can go wrong with a person, a battery or a house, each said once where the risk is. */
export const cautions = {
  mains:
    'Never open or change a mains adapter: that is work for a qualified person under the local electrical code. The manufacturer’s ratings win over every figure here, and a standard or local code over both.',
  battery:
    'A lithium battery bears no heat and no metal tool beside it. Don’t charge it while the case is open; a swollen one ends the job.',
  charge: 'Capacitors hold their charge after the plug is out: measure before you touch.',
  data: 'Data on the machine can be lost. The warranty ends with the first change, and radio and safety approvals may no longer hold.',
  hot: 'Parts burn: a regulator may pass 100 °C while the case only feels warm. Let everything cool first.',
  fumes: 'Solder fumes go into an extractor, not into you. Keep the iron away from the battery and its cable.',
  short:
    'Never bridge a sense resistor outright, not even with a solder ball: the reading falls to zero, and then nothing limits the power.',
  gallium:
    'A gallium alloy dissolves aluminium and conducts: never near aluminium, always with a dam around it, never on bare pads. Gloves and eye protection.',
  plating:
    'Nickel baths are poisonous, sensitising and carcinogenic: leave plating to a commercial plater, and waste to a licensed disposer.',
  watch: 'Never test unattended. A smoke alarm is in the room, and what cuts the power is within reach of your hand.',
} as const;

export type Caution = keyof typeof cautions;
