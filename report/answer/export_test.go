package answer

// SkipIfSlow is handed out to tests outside of the package.
var SkipIfSlow = skipIfSlow
