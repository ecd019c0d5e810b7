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
)
