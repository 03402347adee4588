# Two samples: Welch's t, two one-sided Welch tests, Fieller's sets for a ratio of means.
source("emit.R")
x <- sleep$extra[sleep$group == 1]
y <- sleep$extra[sleep$group == 2]
welch <- t.test(x, y)
emit("welch.t", welch$statistic)
emit("welch.df", welch$parameter)
emit("welch.p", welch$p.value)
emit("welch.interval", welch$conf.int)
for (m in 2:4) {
  emit(paste0("tost.", m, ".lower"), t.test(x, y, mu = -m, alternative = "greater")$p.value)
  emit(paste0("tost.", m, ".upper"), t.test(x, y, mu = m, alternative = "less")$p.value)
}
emit("welch.interval90", t.test(x, y, conf.level = 0.90)$conf.int)

# Fieller by its closed form; each limit is checked against the defining equation
fieller <- function(name, a, b, va, vb, cov, df) {
  t2 <- qt(0.975, df)^2
  roots <- sort(Re(polyroot(c(a^2 - t2 * va, -2 * (a * b - t2 * cov), b^2 - t2 * vb))))
  for (rho in roots) stopifnot(abs((a - rho * b)^2 / (t2 * (va - 2 * rho * cov + rho^2 * vb)) - 1) < 1e-8)
  emit(paste0(name, ".g"), t2 * vb / b^2)
  emit(paste0(name, ".roots"), roots)
}
n <- 10
pooled <- (var(x) + var(y)) / 2 / n
fieller("fieller.pooled", mean(x), mean(y), pooled, pooled, 0, 18)
fieller("fieller.separate", mean(x), mean(y), var(x) / n, var(y) / n, 0, 18)
fieller("fieller.welch", mean(x), mean(y), var(x) / n, var(y) / n, 0, welch$parameter)
fieller("fieller.paired", mean(x), mean(y), var(x) / n, var(y) / n, cov(x, y) / n, 9)
fieller("fieller.inverse", mean(y), mean(x), pooled, pooled, 0, 18)
