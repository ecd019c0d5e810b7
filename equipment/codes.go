package equipment

import "minim/uncertainty"

// The influences of instruments, as data. At of a bias is its mark in mL, of a reading
// its number where there is more than one.
const (
	biasAt        uncertainty.Code = "bias"
	biasOfPiece   uncertainty.Code = "bias of the piece"
	biasCommon    uncertainty.Code = "bias common to marks"
	biasOwn       uncertainty.Code = "bias own to a mark"
	biasRelative  uncertainty.Code = "bias relative to its limit"
	correction    uncertainty.Code = "correction"
	penLineCode   uncertainty.Code = "pen line"
	retainedCode  uncertainty.Code = "retained"
	pourScatter   uncertainty.Code = "scatter of pours"
	shouldKeep    uncertainty.Code = "should have kept"
	keptByDesign  uncertainty.Code = "retained by design"
	filmCarried   uncertainty.Code = "film"
	dropScatter   uncertainty.Code = "scatter of drops"
	dropSizes     uncertainty.Code = "size of drops"
	repeatability uncertainty.Code = "repeatability"
	readingCode   uncertainty.Code = "reading"
	clingingDrops uncertainty.Code = "clinging drops"
	meniscusCode  uncertainty.Code = "meniscus"
	weighing      uncertainty.Code = "weighing"
	zeroRounded   uncertainty.Code = "rounding at zero"
	loadRounded   uncertainty.Code = "rounding at load"
	linearityCode uncertainty.Code = "linearity"
	sensitivity   uncertainty.Code = "sensitivity"
	leftOnBoat    uncertainty.Code = "left on the boat"
)

// film is what the influences of films count towards, one group for each instrument.
const film uncertainty.Kind = "film"
