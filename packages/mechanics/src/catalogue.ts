import { axialPair } from './bearing/axial-pair.ts';
import { dutyLife } from './bearing/duty-life.ts';
import { dutyLoad } from './bearing/duty-load.ts';
import { equivalentLoad } from './bearing/equivalent-load.ts';
import { floatNeeded } from './bearing/float-needed.ts';
import { minimumLoad } from './bearing/minimum-load.ts';
import { conditionFactor } from './bearing/modified-life.ts';
import { plateThrust } from './bearing/plate-thrust.ts';
import { ratingLife } from './bearing/rating-life.ts';
import { ringGroove } from './bearing/ring-groove.ts';
import { slopedLoad } from './bearing/sloped-load.ts';
import { staticSafety } from './bearing/static-safety.ts';
import { viscosityRatio } from './bearing/viscosity-ratio.ts';
import { beltCentreDistance } from './belt/centre-distance.ts';
import { beltLength } from './belt/length.ts';
import { beltPulls } from './belt/pulls.ts';
import { beltToothLoad } from './belt/tooth-load.ts';
import { beltTrapezoidalRating } from './belt/trapezoidal-rating.ts';
import { bevelApex } from './bevel/apex.ts';
import { bevelChartFreeStress } from './bevel/chart-free-stress.ts';
import { bevelForces } from './bevel/forces.ts';
import { bevelGeometry } from './bevel/geometry.ts';
import { bevelGeometryFactors } from './bevel/geometry-factors.ts';
import { bevelLewisCapacity } from './bevel/lewis-capacity.ts';
import { bevelPitchAngles } from './bevel/pitch-angles.ts';
import { bevelSense } from './bevel/sense.ts';
import { bevelSpiralForces } from './bevel/spiral-forces.ts';
import { bevelStress } from './bevel/stress.ts';
import { bevelVirtualTeeth } from './bevel/virtual-teeth.ts';
import { cameraOutOfPlane } from './camera/out-of-plane.ts';
import { chainAlignment } from './chain/alignment.ts';
import { chainArticulation } from './chain/articulation.ts';
import { chainCentreDistance } from './chain/centre-distance.ts';
import { chainCentreDistanceApprox } from './chain/centre-distance-approx.ts';
import { chordalVariation } from './chain/chordal-variation.ts';
import { chainGallingSpeed } from './chain/galling-speed.ts';
import { chainIdlerLength } from './chain/idler-length.ts';
import { chainIsoRating } from './chain/iso-rating.ts';
import { chainJointPressure } from './chain/joint-pressure.ts';
import { chainLength } from './chain/length.ts';
import { chainLengthApprox } from './chain/length-approx.ts';
import { chainPowerRating } from './chain/power-rating.ts';
import { chainPull } from './chain/pull.ts';
import { chainRatedLife } from './chain/rated-life.ts';
import { chainRigidLinks } from './chain/rigid-links.ts';
import { chainSelection } from './chain/selection.ts';
import { chainServicePull } from './chain/service-pull.ts';
import { chainSlack } from './chain/slack.ts';
import { chainSpeed } from './chain/speed.ts';
import { sprocketDiameters } from './chain/sprocket-diameters.ts';
import { sprocketHub } from './chain/sprocket-hub.ts';
import { chainStaticReserve } from './chain/static-reserve.ts';
import { chainWearLife } from './chain/wear-life.ts';
import { chainWearSpread } from './chain/wear-spread.ts';
import { chainWearTakeUp } from './chain/wear-take-up.ts';
import { clearanceCapsules } from './clearance/capsules.ts';
import { clearanceDistance } from './clearance/distance.ts';
import { elasticSelect } from './coupling/elastic-select.ts';
import { couplingMisalignment } from './coupling/misalignment.ts';
import { couplingResonance } from './coupling/resonance.ts';
import { universalCouple } from './coupling/universal-couple.ts';
import { universalPair } from './coupling/universal-pair.ts';
import { universalRatio } from './coupling/universal-ratio.ts';
import { universalRipple } from './coupling/universal-ripple.ts';
import { fitClearance } from './fit/clearance.ts';
import { effectiveInterference } from './fit/effective-interference.ts';
import { joiningTemperature } from './fit/joining-temperature.ts';
import { fitLimits } from './fit/limits.ts';
import { pressFitHold } from './fit/press-fit-hold.ts';
import { pressForce } from './fit/press-force.ts';
import { pressStress } from './fit/press-stress.ts';
import { seatWarm } from './fit/seat-warm.ts';
import { gearDutyReserve } from './gear/duty-reserve.ts';
import { gearHardnessLimits } from './gear/hardness-limits.ts';
import { gearLifeFactor } from './gear/life-factor.ts';
import { boltGroup } from './joint/bolt-group.ts';
import { boltLoad } from './joint/bolt-load.ts';
import { boltModes } from './joint/bolt-modes.ts';
import { boltPreload } from './joint/bolt-preload.ts';
import { boltSlip } from './joint/bolt-slip.ts';
import { boltStiffness } from './joint/bolt-stiffness.ts';
import { boltTension } from './joint/bolt-tension.ts';
import { boltTorque } from './joint/bolt-torque.ts';
import { flankPressure } from './joint/flank-pressure.ts';
import { involuteSpline } from './joint/involute-spline.ts';
import { keyPressure } from './joint/key-pressure.ts';
import { locatingPlay } from './joint/locating-play.ts';
import { setscrewHold } from './joint/setscrew-hold.ts';
import { spigotPressure } from './joint/spigot-pressure.ts';
import { splineCandidates } from './joint/spline-candidates.ts';
import { splineOverPins } from './joint/spline-over-pins.ts';
import { taperGrip } from './joint/taper-grip.ts';
import { threadArea } from './joint/thread-area.ts';
import { threadEngagement } from './joint/thread-engagement.ts';
import { weldAllowed } from './joint/weld-allowed.ts';
import { weldGroup } from './joint/weld-group.ts';
import { weldRing } from './joint/weld-ring.ts';
import { weldTorsion } from './joint/weld-torsion.ts';
import type { Method } from './method/method.ts';
import { bodyMoves } from './mount/body-moves.ts';
import { mountStiffnessByWeight } from './mount/stiffness-by-weight.ts';
import { plateLug } from './plate/lug.ts';
import { plateStrength } from './plate/strength.ts';
import { plateWeb } from './plate/web.ts';
import { ratioForSpeed } from './ratio/for-speed.ts';
import { ratioFromTurns } from './ratio/from-turns.ts';
import { ratioNearestTrain } from './ratio/nearest-train.ts';
import { ratioOverall } from './ratio/overall.ts';
import { ratioPairWear } from './ratio/pair-wear.ts';
import { ratioStage } from './ratio/stage.ts';
import { ratioTrainPower } from './ratio/train-power.ts';
import { RESERVES } from './reserve/reserve.ts';
import { axisAtStation } from './runout/axis-at-station.ts';
import { balance } from './runout/balance.ts';
import { leastSquaresCircle } from './runout/circle.ts';
import { faceSquareness } from './runout/face.ts';
import { fourPoint } from './runout/four-point.ts';
import { gearLimits } from './runout/gear-limits.ts';
import { harmonic } from './runout/harmonic.ts';
import { influence } from './runout/influence.ts';
import { lineFit } from './runout/line-fit.ts';
import { pressSet } from './runout/press.ts';
import { sprocketLimits } from './runout/sprocket-limits.ts';
import { stackUp } from './runout/stack-up.ts';
import { vblockFactor } from './runout/vblock-factor.ts';
import { warmBow } from './runout/warm-bow.ts';
import { shaftCriticalSpeed } from './shaft/critical-speed.ts';
import { shaftEndurance } from './shaft/endurance.ts';
import { shaftFatigue } from './shaft/fatigue.ts';
import { shaftLife } from './shaft/life.ts';
import { shaftNotch } from './shaft/notch.ts';
import { shaftPressFit } from './shaft/press-fit.ts';
import { shaftShoulder } from './shaft/shoulder.ts';
import { shaftTwist } from './shaft/twist.ts';
import { shaftYield } from './shaft/yield.ts';
import { spurForces } from './spur/forces.ts';
import { spurGeometry } from './spur/geometry.ts';
import { spurStress } from './spur/stress.ts';
import { armCentreDistance } from './suspension/centre-distance.ts';
import { chainOnArm } from './suspension/chain-on-arm.ts';
import { armChainTravel } from './suspension/chain-travel.ts';
import { armSlackToSet } from './suspension/slack-to-set.ts';
import { firingFrequency } from './torsion/firing-frequency.ts';
import { isolation } from './torsion/isolation.ts';
import { naturalFrequency } from './torsion/natural-frequency.ts';
import { acceleration } from './vehicle/acceleration.ts';
import { boundedCurve } from './vehicle/bounded-curve.ts';
import { clutchSlipEnergy } from './vehicle/clutch-slip-energy.ts';
import { cycleRun } from './vehicle/cycle-run.ts';
import { frontLift } from './vehicle/front-lift.ts';
import { gradeability } from './vehicle/gradeability.ts';
import { gripLimit } from './vehicle/grip-limit.ts';
import { gyroscopicMoment } from './vehicle/gyroscopic-moment.ts';
import { massFactor } from './vehicle/mass-factor.ts';
import { massFromScales } from './vehicle/mass-from-scales.ts';
import { roadLoad } from './vehicle/road-load.ts';
import { roadSpeed } from './vehicle/road-speed.ts';
import { rollOutMeasured } from './vehicle/roll-out-measured.ts';
import { rollingCircumference } from './vehicle/rolling-circumference.ts';
import { shaftSpeed } from './vehicle/shaft-speed.ts';
import { shiftSpeeds } from './vehicle/shift-speeds.ts';
import { sidewaysLimit } from './vehicle/sideways-limit.ts';
import { speedometerCorrection } from './vehicle/speedometer-correction.ts';
import { topSpeed } from './vehicle/top-speed.ts';
import { torqueCurve } from './vehicle/torque-curve.ts';
import { tractiveForce } from './vehicle/tractive-force.ts';
import { tyreDiameter } from './vehicle/tyre-diameter.ts';
import { tyreGrowth } from './vehicle/tyre-growth.ts';
import { wheelInertiaBounds } from './vehicle/wheel-inertia-bounds.ts';
import { wheelInertiaFromSwing } from './vehicle/wheel-inertia-from-swing.ts';
import { wheelInertiaFromWires } from './vehicle/wheel-inertia-from-wires.ts';

/** Every public method, for lookup by id. */
export const METHODS: readonly Method[] = [
  axisAtStation,
  balance,
  leastSquaresCircle,
  faceSquareness,
  fourPoint,
  gearLimits,
  harmonic,
  influence,
  lineFit,
  pressSet,
  sprocketLimits,
  stackUp,
  vblockFactor,
  warmBow,
  effectiveInterference,
  fitClearance,
  fitLimits,
  joiningTemperature,
  pressFitHold,
  pressForce,
  pressStress,
  seatWarm,
  plateLug,
  plateStrength,
  plateWeb,
  axialPair,
  flankPressure,
  locatingPlay,
  spigotPressure,
  weldTorsion,
  shaftCriticalSpeed,
  shaftLife,
  shaftPressFit,
  shaftEndurance,
  shaftFatigue,
  shaftNotch,
  shaftShoulder,
  shaftTwist,
  naturalFrequency,
  firingFrequency,
  isolation,
  shaftYield,
  dutyLife,
  dutyLoad,
  floatNeeded,
  plateThrust,
  ringGroove,
  slopedLoad,
  equivalentLoad,
  minimumLoad,
  conditionFactor,
  ratingLife,
  staticSafety,
  viscosityRatio,
  acceleration,
  armCentreDistance,
  armChainTravel,
  armSlackToSet,
  beltCentreDistance,
  beltLength,
  bevelApex,
  bevelForces,
  bevelGeometry,
  bevelPitchAngles,
  bevelSense,
  bevelSpiralForces,
  bevelVirtualTeeth,
  boundedCurve,
  cameraOutOfPlane,
  beltPulls,
  beltToothLoad,
  beltTrapezoidalRating,
  bevelChartFreeStress,
  bevelGeometryFactors,
  bevelLewisCapacity,
  bevelStress,
  gearDutyReserve,
  gearHardnessLimits,
  gearLifeFactor,
  spurStress,
  chainAlignment,
  chainArticulation,
  chainGallingSpeed,
  chainIsoRating,
  chainJointPressure,
  chainPowerRating,
  chainRatedLife,
  chainSelection,
  chainServicePull,
  chainWearLife,
  sprocketHub,
  chainCentreDistance,
  chainCentreDistanceApprox,
  chainIdlerLength,
  chainLength,
  chainLengthApprox,
  chainOnArm,
  chainPull,
  chainRigidLinks,
  chainSlack,
  chainSpeed,
  chainStaticReserve,
  chainWearSpread,
  chainWearTakeUp,
  chordalVariation,
  clearanceCapsules,
  clearanceDistance,
  clutchSlipEnergy,
  couplingMisalignment,
  couplingResonance,
  cycleRun,
  elasticSelect,
  frontLift,
  gradeability,
  gripLimit,
  gyroscopicMoment,
  massFactor,
  massFromScales,
  mountStiffnessByWeight,
  bodyMoves,
  ratioForSpeed,
  ratioFromTurns,
  ratioNearestTrain,
  ratioOverall,
  ratioPairWear,
  ratioStage,
  ratioTrainPower,
  roadLoad,
  roadSpeed,
  rollOutMeasured,
  rollingCircumference,
  shaftSpeed,
  shiftSpeeds,
  sidewaysLimit,
  speedometerCorrection,
  sprocketDiameters,
  spurForces,
  spurGeometry,
  topSpeed,
  torqueCurve,
  tractiveForce,
  tyreDiameter,
  tyreGrowth,
  universalCouple,
  universalPair,
  universalRatio,
  universalRipple,
  wheelInertiaBounds,
  wheelInertiaFromSwing,
  wheelInertiaFromWires,
  boltGroup,
  boltLoad,
  boltModes,
  boltPreload,
  boltSlip,
  boltStiffness,
  boltTension,
  boltTorque,
  involuteSpline,
  keyPressure,
  setscrewHold,
  splineCandidates,
  splineOverPins,
  taperGrip,
  threadArea,
  threadEngagement,
  weldAllowed,
  weldGroup,
  weldRing,
  ...Object.values(RESERVES),
];
