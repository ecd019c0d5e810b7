package answer

// Thorough is handed out to tests outside of the package.
var Thorough = &thorough
