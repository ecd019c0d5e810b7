package route

import "minim/uncertainty"

// The influences of materials and of the day, as data.
const (
	temperatureOfDay uncertainty.Code = "temperature"
	evaporated       uncertainty.Code = "evaporation"
	lossWithAge      uncertainty.Code = "loss with age"
	buoyancyOfAir    uncertainty.Code = "buoyancy"
	contentOfPacket  uncertainty.Code = "content"
	strengthOfStock  uncertainty.Code = "strength"
	volumeOfStock    uncertainty.Code = "volume"
	assay            uncertainty.Code = "assay"
	molarMass        uncertainty.Code = "molar mass"
	density          uncertainty.Code = "density"
	activity         uncertainty.Code = "activity"
	specificVolume   uncertainty.Code = "specific volume"
	shrinking        uncertainty.Code = "shrinking"
)

// Evaporation and Mixing are what the influences of what evaporates count towards, and of what takes
// up less, or more, when it is mixed.
const (
	Evaporation uncertainty.Kind = "evaporation"
	Mixing      uncertainty.Kind = "mixing"
)

// Quantities on the way, which a message may have to name.
const (
	totalMass         uncertainty.Code = "total mass"
	massOfSolution    uncertainty.Code = "mass of the solution"
	densityOfSolution uncertainty.Code = "density of the solution"
	solventInSolution uncertainty.Code = "solvent in the solution"
	volumeOfSolution  uncertainty.Code = "volume of the solution"
	volumeInVessel    uncertainty.Code = "volume in a vessel"
	mixedVolume       uncertainty.Code = "mixed volume"
	volumeMeasured    uncertainty.Code = "volume measured"
	massWeighed       uncertainty.Code = "mass weighed"
	purityOfSolute    uncertainty.Code = "purity"
	inSolution        uncertainty.Code = "concentration of a solution"
	inStock           uncertainty.Code = "concentration of a stock"
	fractionOf        uncertainty.Code = "fraction of a solution"
	strengthInUnit    uncertainty.Code = "strength in a unit"
	// Figures that are taken as exactly known.
	densityOfLiquid uncertainty.Code = "density of a liquid"
	conversion      uncertainty.Code = "conversion"
	formFactor      uncertainty.Code = "form factor"
	contraction     uncertainty.Code = "contraction"
	slopeOfTable    uncertainty.Code = "slope of a density"
	countedOfForm   uncertainty.Code = "counted of a form"
)
