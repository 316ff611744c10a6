//go:build !linux

package network

import "time"

var began = time.Now()

// processor is, where the system is not asked for it, the time that has passed.
func processor() time.Duration { return time.Since(began) }
