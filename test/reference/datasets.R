# The data sets of R's own `datasets` package that the other scripts and the tests use.
source("emit.R")
emit("sleep.group1", sleep$extra[sleep$group == 1])
emit("sleep.group2", sleep$extra[sleep$group == 2])
emit("cars.speed", cars$speed)
emit("cars.dist", cars$dist)
emit("npk.block", as.integer(as.character(npk$block)))
emit("npk.N", as.integer(as.character(npk$N)))
emit("npk.P", as.integer(as.character(npk$P)))
emit("npk.K", as.integer(as.character(npk$K)))
emit("npk.yield", npk$yield)
emit("warpbreaks.wool", as.integer(warpbreaks$wool))       # 1 A, 2 B
emit("warpbreaks.tension", as.integer(warpbreaks$tension)) # 1 L, 2 M, 3 H
emit("warpbreaks.breaks", warpbreaks$breaks)
emit("PlantGrowth.group", as.integer(PlantGrowth$group))   # 1 ctrl, 2 trt1, 3 trt2
emit("PlantGrowth.weight", PlantGrowth$weight)
ozone <- airquality[!is.na(airquality$Ozone), ]
emit("airquality.Month", ozone$Month)
emit("airquality.Ozone", ozone$Ozone)
