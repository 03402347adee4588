# Multiple comparisons.
source("emit.R")
p_sets <- list(c(.01, .02, .03, .04), c(.01, .02, .03, .04, .05), c(.01, .04, .03, .005), c(.0001, .01, .03, .5), c(.02, .02, .5, 1))
for (i in seq_along(p_sets)) {
  emit(paste0("p.", i), p_sets[[i]])
  emit(paste0("holm.", i), p.adjust(p_sets[[i]], "holm"))
}
lower <- function(m) m[lower.tri(m, diag = TRUE)] # down the columns: 1-2, 1-3, 2-3 for three groups
plant <- function(method) lower(pairwise.t.test(PlantGrowth$weight, PlantGrowth$group, method, pool.sd = FALSE)$p.value)
emit("PlantGrowth.welch.unadjusted", plant("none"))
emit("PlantGrowth.welch.holm", plant("holm"))
ozone <- function(method) lower(pairwise.t.test(airquality$Ozone, airquality$Month, method)$p.value)
emit("airquality.unadjusted", ozone("none"))
emit("airquality.holm", ozone("holm"))
