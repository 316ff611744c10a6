//go:build !linux

package main

import "time"

// threadTime is not told here.
func threadTime() (time.Duration, bool) { return 0, false }
