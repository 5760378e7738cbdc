/** Random tests draw from one seed, so that a run repeats to the bit; POLEWRIGHT_SEED draws from another. */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.POLEWRIGHT_SEED ?? 20261125) });
