package main

import _ "github.com/spf13/pflag"

func main() {}
