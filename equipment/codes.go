package equipment

import "minim/uncertainty"

// The influences of instruments, as data. At of a bias is its mark in mL, of a reading
// its number where there is more than one.
const (
	biasAt       uncertainty.Code = "bias"
	biasOfPiece  uncertainty.Code = "bias of the piece"
	biasCommon   uncertainty.Code = "bias common to marks"
	biasOwn      uncertainty.Code = "bias own to a mark"
	biasRelative uncertainty.Code = "bias relative to its limit"
	correction   uncertainty.Code = "correction"
	// What own readings say of the error of a piece, and of all that comes out of it.
	biasByReadings      uncertainty.Code = "bias by readings"
	deliveredByReadings uncertainty.Code = "delivered by readings"
	penLineCode         uncertainty.Code = "pen line"
	retainedCode        uncertainty.Code = "retained"
	pourScatter         uncertainty.Code = "scatter of pours"
	shouldKeep          uncertainty.Code = "should have kept"
	keptByDesign        uncertainty.Code = "retained by design"
	filmCarried         uncertainty.Code = "film"
	dropScatter         uncertainty.Code = "scatter of drops"
	dropSizes           uncertainty.Code = "size of drops"
	repeatability       uncertainty.Code = "repeatability"
	readingCode         uncertainty.Code = "reading"
	clingingDrops       uncertainty.Code = "clinging drops"
	meniscusCode        uncertainty.Code = "meniscus"
	weighing            uncertainty.Code = "weighing"
	zeroRounded         uncertainty.Code = "rounding at zero"
	loadRounded         uncertainty.Code = "rounding at load"
	linearityCode       uncertainty.Code = "linearity"
	sensitivity         uncertainty.Code = "sensitivity"
	leftOnBoat          uncertainty.Code = "left on the boat"
	linearAtZero        uncertainty.Code = "linearity at zero"
	checkError          uncertainty.Code = "error at a check weight"
)

// The two parts of the error of linearity of a balance. At of a local one is a load in g, of
// the curve the number of a part of it.
const (
	linearAtLoad   uncertainty.Code = "linearity at a load"
	linearInBoat   uncertainty.Code = "linearity at a load in a boat"
	linearInVessel uncertainty.Code = "linearity at a load in a vessel"
	linearCurve    uncertainty.Code = "curve of linearity"
	linearGrowing  uncertainty.Code = "curve of linearity that grows"
	// How wide a piece is inside, and how far the liquid beside its name rises at its wall of plastic.
	BoreCode    uncertainty.Code = "bore"
	wettingCode uncertainty.Code = "wetting"
	// Of mixtures that lie somewhere between their parts; that of the expansion beside the name.
	mixedMeniscus  uncertainty.Code = "meniscus of a mixture"
	mixedExpansion uncertainty.Code = "expansion of a mixture"
	// Of a piston over a cushion of air, beside the name of the liquid.
	cushionAt      uncertainty.Code = "cushion"
	cushionOfPiece uncertainty.Code = "cushion of the piece"
	cushionCommon  uncertainty.Code = "cushion common to marks"
	cushionOwn     uncertainty.Code = "cushion own to a mark"
)

// Quantities on the way, and figures that are taken as exactly known.
const (
	expansionOfPiece  uncertainty.Code = "expansion"
	expansionOfLiquid uncertainty.Code = "expansion of a liquid"
	expansionSpan     uncertainty.Code = "span of expansion"
	limitOfError      uncertainty.Code = "limit of error"
	limitWithCushion  uncertainty.Code = "limit with a cushion"
	meniscusPart      uncertainty.Code = "part of a meniscus"
	meniscusByBore    uncertainty.Code = "meniscus by bore"
	partByRinse       uncertainty.Code = "part left by a rinse"
	linearityError    uncertainty.Code = "error of linearity"
	sizeOfDrop        uncertainty.Code = "drop"
	fillOfLine        uncertainty.Code = "fill of a line"
)

// film is what the influences of films count towards, one group for each instrument.
const film uncertainty.Kind = "film"
