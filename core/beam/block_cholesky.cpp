#include "core/beam/block_cholesky.h"

#include <cmath>

namespace shaftwright::beam
{

namespace
{

using Mat6 = BlockCholesky::Mat6;
using Vec6 = BlockCholesky::Vec6;

// C with C C^T = A, lower triangle only, and 1/C(k,k). Written out for six: the sizes are known to the compiler.
bool choleskyInPlace(Mat6& a, const Vec6& original, Vec6& inverse)
{
    for (int k = 0; k < 6; ++k) {
        double pivot = a(k, k);
        for (int m = 0; m < k; ++m)
            pivot -= a(k, m) * a(k, m);
        if (!(pivot > 1e-13 * original[k])) // also catches NaN
            return false;
        const double root = std::sqrt(pivot);
        a(k, k) = root;
        inverse[k] = 1.0 / root;
        for (int r = k + 1; r < 6; ++r) {
            double sum = a(r, k);
            for (int m = 0; m < k; ++m)
                sum -= a(r, m) * a(k, m);
            a(r, k) = sum * inverse[k];
        }
    }
    return true;
}

void forward(const Mat6& c, const Vec6& inverse, Vec6& x)
{
    for (int k = 0; k < 6; ++k) {
        x[k] *= inverse[k];
        for (int r = k + 1; r < 6; ++r)
            x[r] -= c(r, k) * x[k];
    }
}

void backward(const Mat6& c, const Vec6& inverse, Vec6& x)
{
    for (int k = 5; k >= 0; --k) {
        double sum = x[k];
        for (int r = k + 1; r < 6; ++r)
            sum -= c(r, k) * x[r];
        x[k] = sum * inverse[k];
    }
}

} // namespace

void BlockCholesky::resize(std::size_t nodes)
{
    m_diagonal.assign(nodes, Mat6::Zero());
    m_lower.assign(nodes > 0 ? nodes - 1 : 0, Mat6::Zero());
    m_factor.resize(nodes);
    m_coupling.resize(m_lower.size());
    m_inversePivots.resize(nodes);
}

bool BlockCholesky::factorise()
{
    const std::size_t n = size();
    for (std::size_t i = 0; i < n; ++i) {
        Mat6& c = m_factor[i];
        c = m_diagonal[i];
        if (i > 0)
            c.noalias() -= m_coupling[i - 1] * m_coupling[i - 1].transpose();
        if (!choleskyInPlace(c, m_diagonal[i].diagonal(), m_inversePivots[i]))
            return false;
        if (i + 1 < n) {
            // W = O C^-T: column k of W needs the columns before it.
            Mat6& w = m_coupling[i];
            const Mat6& o = m_lower[i];
            for (int k = 0; k < 6; ++k) {
                Vec6 column = o.col(k);
                for (int m = 0; m < k; ++m)
                    column -= w.col(m) * c(k, m);
                w.col(k) = column * m_inversePivots[i][k];
            }
        }
    }
    return true;
}

void BlockCholesky::solve(Vec6* rhs) const
{
    const std::size_t n = size();
    for (std::size_t i = 0; i < n; ++i) {
        if (i > 0)
            rhs[i].noalias() -= m_coupling[i - 1] * rhs[i - 1];
        forward(m_factor[i], m_inversePivots[i], rhs[i]);
    }
    for (std::size_t i = n; i-- > 0;) {
        if (i + 1 < n)
            rhs[i].noalias() -= m_coupling[i].transpose() * rhs[i + 1];
        backward(m_factor[i], m_inversePivots[i], rhs[i]);
    }
}

void BlockCholesky::multiply(const Vec6* x, Vec6* y) const
{
    const std::size_t n = size();
    for (std::size_t i = 0; i < n; ++i) {
        y[i].noalias() = m_diagonal[i] * x[i];
        if (i > 0)
            y[i].noalias() += m_lower[i - 1] * x[i - 1];
        if (i + 1 < n)
            y[i].noalias() += m_lower[i].transpose() * x[i + 1];
    }
}

} // namespace shaftwright::beam
